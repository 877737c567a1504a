use super::*;

const SHEET: Sheet = Sheet {
    e_mod: 69e9,
    nu: 0.33,
    rho: 2700.0,
    t: 2e-3,
};

fn near(value: f64, expected: f64, tolerance: f64) {
    assert!(
        (value / expected - 1.0).abs() < tolerance,
        "{value} against {expected}"
    );
}

/// Source: simply supported rectangle, exact: pi^2 (m^2 + n^2 (a/b)^2).
#[test]
fn supported_edges_give_the_exact_frequencies() {
    let supported = (Edge::Supported, Edge::Supported);
    let panel = Panel {
        a: 0.3,
        b: 0.2,
        x_edges: supported,
        y_edges: supported,
    };
    let found = Ritz::new(&SHEET, &panel).unwrap().parameters(4).unwrap();
    let pi2 = core::f64::consts::PI * core::f64::consts::PI;
    for (value, expected) in found.iter().zip([3.25, 6.25, 10.0, 11.25]) {
        near(*value, pi2 * expected, 1e-8);
    }
}

/// Source: converged independent finite elements (free wall 60 by 30, 2 thick); the point load on the edge is the hard part.
#[test]
fn a_wall_gives_at_its_corner() {
    let ritz = Ritz::new(&SHEET, &Panel::wall(0.06, 0.03)).unwrap();
    near(
        ritz.compliance(0.03, 0.03).unwrap() * 100.0,
        0.373_01e-3,
        0.005,
    );
    near(
        ritz.compliance(0.0, 0.03).unwrap() * 100.0,
        0.744_24e-3,
        0.005,
    );
    near(ritz.frequencies(&SHEET, 1).unwrap()[0], 1906.8, 0.002);
}

#[test]
fn a_panel_that_nothing_holds_has_modes_but_no_compliance() {
    let free = (Edge::Free, Edge::Free);
    let panel = Panel {
        a: 0.1,
        b: 0.1,
        x_edges: free,
        y_edges: free,
    };
    let ritz = Ritz::new(&SHEET, &panel).unwrap();
    assert!(ritz.compliance(0.05, 0.05).is_err());
    assert!(ritz.parameters(5).unwrap()[0] > 10.0);
}

#[test]
fn impossible_panels_are_refused() {
    for (a, b) in [
        (0.0, 0.1),
        (0.1, f64::NAN),
        (1.2, 0.1),
        (f64::INFINITY, 0.1),
    ] {
        assert!(Ritz::new(&SHEET, &Panel::wall(a, b)).is_err());
    }
    let ritz = Ritz::new(&SHEET, &Panel::wall(0.1, 0.1)).unwrap();
    assert!(ritz.compliance(0.05, 0.11).is_err());
    assert!(ritz.parameters(13).is_err());
}
