//! The cut and the cutter: kernels in SI, pure functions of f64.
