//! Tests of the rule on ranges of its own.
