//! The tables of ISO 286-1 up to 250 mm, in micrometres.
//!
//! The values are *from memory*; the rows of the check file that two other copies agree on are met. Letters j, J, v, y and z, and
//! grades below 5 and above 11, are not in that file and rest on memory alone.

use super::class::Letter;

/// Upper bounds of the main steps, mm; a step holds its upper bound.
const MAIN: [f64; 10] = [3.0, 6.0, 10.0, 18.0, 30.0, 50.0, 80.0, 120.0, 180.0, 250.0];

/// Upper bounds of the intermediate steps, mm, by which the letters far from the line go.
const FINE: [f64; 19] =
    [3.0, 6.0, 10.0, 14.0, 18.0, 24.0, 30.0, 40.0, 50.0, 65.0, 80.0, 100.0, 120.0, 140.0, 160.0, 180.0, 200.0, 225.0, 250.0];

/// A deviation the standard does not give.
const NONE: f64 = f64::NAN;

/// Lowest and highest grade of the table below.
pub(super) const GRADES: (u8, u8) = (2, 16);

/// IT2 to IT16, for each main step.
const TOLERANCES: [[f64; 15]; 10] = [
    [1.2, 2.0, 3.0, 4.0, 6.0, 10.0, 14.0, 25.0, 40.0, 60.0, 100.0, 140.0, 250.0, 400.0, 600.0],
    [1.5, 2.5, 4.0, 5.0, 8.0, 12.0, 18.0, 30.0, 48.0, 75.0, 120.0, 180.0, 300.0, 480.0, 750.0],
    [1.5, 2.5, 4.0, 6.0, 9.0, 15.0, 22.0, 36.0, 58.0, 90.0, 150.0, 220.0, 360.0, 580.0, 900.0],
    [2.0, 3.0, 5.0, 8.0, 11.0, 18.0, 27.0, 43.0, 70.0, 110.0, 180.0, 270.0, 430.0, 700.0, 1100.0],
    [2.5, 4.0, 6.0, 9.0, 13.0, 21.0, 33.0, 52.0, 84.0, 130.0, 210.0, 330.0, 520.0, 840.0, 1300.0],
    [2.5, 4.0, 7.0, 11.0, 16.0, 25.0, 39.0, 62.0, 100.0, 160.0, 250.0, 390.0, 620.0, 1000.0, 1600.0],
    [3.0, 5.0, 8.0, 13.0, 19.0, 30.0, 46.0, 74.0, 120.0, 190.0, 300.0, 460.0, 740.0, 1200.0, 1900.0],
    [4.0, 6.0, 10.0, 15.0, 22.0, 35.0, 54.0, 87.0, 140.0, 220.0, 350.0, 540.0, 870.0, 1400.0, 2200.0],
    [5.0, 8.0, 12.0, 18.0, 25.0, 40.0, 63.0, 100.0, 160.0, 250.0, 400.0, 630.0, 1000.0, 1600.0, 2500.0],
    [7.0, 10.0, 14.0, 20.0, 29.0, 46.0, 72.0, 115.0, 185.0, 290.0, 460.0, 720.0, 1150.0, 1850.0, 2900.0],
];

type Main = [f64; 10];
type Fine = [f64; 19];

const A: Fine =
    [270.0, 270.0, 280.0, 290.0, 290.0, 300.0, 300.0, 310.0, 320.0, 340.0, 360.0, 380.0, 410.0, 460.0, 520.0, 580.0, 660.0, 740.0, 820.0];
const B: Fine =
    [140.0, 140.0, 150.0, 150.0, 150.0, 160.0, 160.0, 170.0, 180.0, 190.0, 200.0, 220.0, 240.0, 260.0, 280.0, 310.0, 340.0, 380.0, 420.0];
const C: Fine =
    [60.0, 70.0, 80.0, 95.0, 95.0, 110.0, 110.0, 120.0, 130.0, 140.0, 150.0, 170.0, 180.0, 200.0, 210.0, 230.0, 240.0, 260.0, 280.0];
const D: Main = [20.0, 30.0, 40.0, 50.0, 65.0, 80.0, 100.0, 120.0, 145.0, 170.0];
const E: Main = [14.0, 20.0, 25.0, 32.0, 40.0, 50.0, 60.0, 72.0, 85.0, 100.0];
const F: Main = [6.0, 10.0, 13.0, 16.0, 20.0, 25.0, 30.0, 36.0, 43.0, 50.0];
const G: Main = [2.0, 4.0, 5.0, 6.0, 7.0, 9.0, 10.0, 12.0, 14.0, 15.0];
const K: Main = [0.0, 1.0, 1.0, 1.0, 2.0, 2.0, 2.0, 3.0, 3.0, 4.0];
const M: Main = [2.0, 4.0, 6.0, 7.0, 8.0, 9.0, 11.0, 13.0, 15.0, 17.0];
const N: Main = [4.0, 8.0, 10.0, 12.0, 15.0, 17.0, 20.0, 23.0, 27.0, 31.0];
const P: Main = [6.0, 12.0, 15.0, 18.0, 22.0, 26.0, 32.0, 37.0, 43.0, 50.0];
const R: Fine = [10.0, 15.0, 19.0, 23.0, 23.0, 28.0, 28.0, 34.0, 34.0, 41.0, 43.0, 51.0, 54.0, 63.0, 65.0, 68.0, 77.0, 80.0, 84.0];
const S: Fine = [14.0, 19.0, 23.0, 28.0, 28.0, 35.0, 35.0, 43.0, 43.0, 53.0, 59.0, 71.0, 79.0, 92.0, 100.0, 108.0, 122.0, 130.0, 140.0];
const T: Fine = [NONE, NONE, NONE, NONE, NONE, NONE, 41.0, 48.0, 54.0, 66.0, 75.0, 91.0, 104.0, 122.0, 134.0, 146.0, 166.0, 180.0, 196.0];
const U: Fine = [18.0, 23.0, 28.0, 33.0, 33.0, 41.0, 48.0, 60.0, 70.0, 87.0, 102.0, 124.0, 144.0, 170.0, 190.0, 210.0, 236.0, 258.0, 284.0];
const V: Fine =
    [NONE, NONE, NONE, NONE, 39.0, 47.0, 55.0, 68.0, 81.0, 102.0, 120.0, 146.0, 172.0, 202.0, 228.0, 252.0, 284.0, 310.0, 340.0];
const X: Fine =
    [20.0, 28.0, 34.0, 40.0, 45.0, 54.0, 64.0, 80.0, 97.0, 122.0, 146.0, 178.0, 210.0, 248.0, 280.0, 310.0, 350.0, 385.0, 425.0];
const Y: Fine =
    [NONE, NONE, NONE, NONE, NONE, 63.0, 75.0, 94.0, 114.0, 144.0, 174.0, 214.0, 254.0, 300.0, 340.0, 380.0, 425.0, 470.0, 520.0];
const Z: Fine =
    [26.0, 35.0, 42.0, 50.0, 60.0, 73.0, 88.0, 112.0, 136.0, 172.0, 210.0, 258.0, 310.0, 365.0, 415.0, 465.0, 520.0, 575.0, 640.0];

/// Lower deviation of j5 and j6, below the line.
const J_SHAFT_FINE: Main = [2.0, 2.0, 2.0, 3.0, 4.0, 5.0, 7.0, 9.0, 11.0, 13.0];
/// Lower deviation of j7, below the line.
const J_SHAFT_7: Main = [4.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 15.0, 18.0, 21.0];
/// Upper deviation of J6, J7 and J8.
const J_HOLE: [Main; 3] = [
    [2.0, 5.0, 5.0, 6.0, 8.0, 10.0, 13.0, 16.0, 18.0, 22.0],
    [4.0, 6.0, 8.0, 10.0, 12.0, 14.0, 18.0, 22.0, 26.0, 30.0],
    [6.0, 10.0, 12.0, 15.0, 20.0, 24.0, 28.0, 34.0, 41.0, 47.0],
];

fn index(steps: &[f64], diameter: f64) -> usize {
    steps.iter().position(|bound| diameter <= *bound).unwrap_or(steps.len())
}

fn main_step(of: &Main, diameter: f64) -> Option<f64> {
    of.get(index(&MAIN, diameter)).copied()
}

fn fine_step(of: &Fine, diameter: f64) -> Option<f64> {
    of.get(index(&FINE, diameter)).copied().filter(|value| !value.is_nan())
}

/// The tolerance of a grade at a diameter in mm.
pub(super) fn tolerance(grade: u8, diameter: f64) -> Option<f64> {
    // The coarsest grades would be wider than the smallest parts.
    if grade >= 14 && diameter <= 1.0 {
        return None;
    }
    let column = usize::from(grade.checked_sub(GRADES.0)?);
    TOLERANCES.get(index(&MAIN, diameter))?.get(column).copied()
}

/// The bounds of the main step a diameter in mm lies in, mm.
pub(super) fn step(diameter: f64) -> Option<(f64, f64)> {
    let at = index(&MAIN, diameter);
    // The first step counts from 1 mm in the standard's own formulas.
    let below = at.checked_sub(1).map_or(1.0, |before| MAIN[before]);
    MAIN.get(at).map(|above| (below, *above))
}

/// How far from the line a letter begins, without its sign; for k as in grades 4 to 7.
pub(super) fn deviation(letter: Letter, diameter: f64) -> Option<f64> {
    match letter {
        Letter::A | Letter::B if diameter <= 1.0 => None,
        Letter::A => fine_step(&A, diameter),
        Letter::B => fine_step(&B, diameter),
        Letter::C => fine_step(&C, diameter),
        Letter::D => main_step(&D, diameter),
        Letter::E => main_step(&E, diameter),
        Letter::F => main_step(&F, diameter),
        Letter::G => main_step(&G, diameter),
        Letter::H => Some(0.0),
        Letter::J | Letter::Js => None,
        Letter::K => main_step(&K, diameter),
        Letter::M => main_step(&M, diameter),
        Letter::N => main_step(&N, diameter),
        Letter::P => main_step(&P, diameter),
        Letter::R => fine_step(&R, diameter),
        Letter::S => fine_step(&S, diameter),
        Letter::T => fine_step(&T, diameter),
        Letter::U => fine_step(&U, diameter),
        Letter::V => fine_step(&V, diameter),
        Letter::X => fine_step(&X, diameter),
        Letter::Y => fine_step(&Y, diameter),
        Letter::Z => fine_step(&Z, diameter),
    }
}

/// How far below the line a shaft j begins.
pub(super) fn shaft_j(grade: u8, diameter: f64) -> Option<f64> {
    match grade {
        5 | 6 => main_step(&J_SHAFT_FINE, diameter),
        7 => main_step(&J_SHAFT_7, diameter),
        _ => None,
    }
}

/// How far above the line a hole J ends.
pub(super) fn hole_j(grade: u8, diameter: f64) -> Option<f64> {
    main_step(J_HOLE.get(usize::from(grade.checked_sub(6)?))?, diameter)
}
