//! An allocator that counts, each thread for itself.
#![allow(
    unsafe_code,
    reason = "an allocator is unsafe by its contract; this one hands everything on"
)]

use std::alloc::{GlobalAlloc, Layout, System};
use std::cell::Cell;

/// What was asked of the memory.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Memory {
    /// Blocks taken or made larger.
    pub(crate) allocations: u64,
    /// The most bytes that were held at one time, beyond what was held before.
    pub(crate) peak: u64,
}

#[derive(Clone, Copy)]
struct Held {
    allocations: u64,
    /// Bytes now; below nothing where more is given back than was taken.
    now: i64,
    peak: i64,
}

thread_local! {
    static HELD: Cell<Held> = const { Cell::new(Held { allocations: 0, now: 0, peak: 0 }) };
}

/// The system's allocator, counted.
struct Counting;

#[global_allocator]
static COUNTING: Counting = Counting;

fn note(allocations: u64, taken: usize, given_back: usize) {
    let bytes = |size: usize| i64::try_from(size).unwrap_or(i64::MAX);
    // A thread that ends counts no more.
    let _ = HELD.try_with(|held| {
        let mut h = held.get();
        h.allocations += allocations;
        h.now += bytes(taken) - bytes(given_back);
        h.peak = h.peak.max(h.now);
        held.set(h);
    });
}

// SAFETY: every call is handed to the system's allocator as it is; counting takes no memory.
unsafe impl GlobalAlloc for Counting {
    unsafe fn alloc(&self, layout: Layout) -> *mut u8 {
        note(1, layout.size(), 0);
        // SAFETY: as the caller promises.
        unsafe { System.alloc(layout) }
    }

    unsafe fn alloc_zeroed(&self, layout: Layout) -> *mut u8 {
        note(1, layout.size(), 0);
        // SAFETY: as the caller promises.
        unsafe { System.alloc_zeroed(layout) }
    }

    unsafe fn dealloc(&self, block: *mut u8, layout: Layout) {
        note(0, 0, layout.size());
        // SAFETY: as the caller promises.
        unsafe { System.dealloc(block, layout) }
    }

    unsafe fn realloc(&self, block: *mut u8, layout: Layout, size: usize) -> *mut u8 {
        note(1, size, layout.size());
        // SAFETY: as the caller promises.
        unsafe { System.realloc(block, layout, size) }
    }
}

/// What a piece of work gives, and what it asked of the memory.
pub(crate) fn measured<T>(work: impl FnOnce() -> T) -> (T, Memory) {
    HELD.set(Held {
        allocations: 0,
        now: 0,
        peak: 0,
    });
    let done = work();
    let held = HELD.get();
    let memory = Memory {
        allocations: held.allocations,
        peak: u64::try_from(held.peak).unwrap_or(0),
    };
    (done, memory)
}
