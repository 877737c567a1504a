//! Every sentence: a kind and its numbers in, words in a language out.
