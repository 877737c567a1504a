//! What held and what sang where no tone is known.

use super::*;

/// The same where no tone is known.
fn heard_untold(sang: bool, depth_mm: f64) -> Seen {
    let seen = heard(sang, depth_mm);
    let song = seen.song.map(|song| Song {
        told: false,
        ..song
    });
    Seen { song, ..seen }
}

/// What shops run daily stands far above what is worked out without a tone: that is no contradiction, it teaches little,
/// and saying it again and again teaches no more than how far that is off.
#[test]
fn without_a_tone_deep_cuts_that_hold_are_possible_and_prove_little() {
    for times in [5.0, 20.0, 60.0] {
        let once = learn(&[heard_untold(false, times)]);
        assert!(once.at_odds.is_empty(), "{times}");
        let often = learn(&[heard_untold(false, times); 12]);
        assert!(often.at_odds.is_empty(), "{times}");
        for quantity in Quantity::ALL {
            assert!(
                left(&often, quantity) > 0.5,
                "{times} {quantity:?} {often:?}"
            );
        }
        // With a tone the same is out of the question.
        assert!(!learn(&[heard(false, times)]).at_odds.is_empty());
    }
    // Held deep in one step, sang shallower in another: steps differ.
    let both = learn(&[heard_untold(false, 30.0), heard_untold(true, 15.0)]);
    assert!(both.at_odds.is_empty());
    // Beyond what is run anywhere it does teach, and in the right direction.
    let often = learn(&[heard_untold(false, 600.0); 12]);
    let ((low, _), (least, _)) = often.of(Quantity::Damping);
    assert!(least > low, "{often:?}");
    let sang = learn(&[heard_untold(true, 0.003); 12]);
    let ((_, high), (_, most)) = sang.of(Quantity::Damping);
    assert!(most < high, "{sang:?}");
}
