//! Checks of the planar geometry.
