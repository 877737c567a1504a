//! The trade: answers in, a checked strategy out.
