//! Physical quantities as small types: parsing what people type, formatting what they read.
