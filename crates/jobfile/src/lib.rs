//! Job files: versioned JSON of answers and strategies.
