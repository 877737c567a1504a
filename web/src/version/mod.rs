//! Which version the page is, whether it is kept on this device, and whether a newer one waits.

mod foot;
mod newer;
mod standing;

pub(crate) use foot::Foot;
pub(crate) use newer::Newer;
