//! How long a year of ten machines takes, at twelve steps an hour.

use divan::Bencher;
use formulas::corrosion::Wear;
use formulas::sweating::{Body, Heat, Hour, Room, simulate};

fn main() {
    divan::main();
}

fn hours() -> Vec<Hour> {
    (0..8760_u16)
        .map(|hour| {
            let (day, year) = (f64::from(hour) / 24.0, f64::from(hour) / 8760.0);
            let celsius = 10.0 - 9.0 * (year * std::f64::consts::TAU).cos() - 4.0 * (day * std::f64::consts::TAU).cos();
            let month = u8::try_from(hour / 730 + 1).unwrap_or(12);
            Hour { celsius, humidity: 0.8, pascals: 101_325.0, month }
        })
        .collect()
}

#[divan::bench(args = [1, 10])]
fn year(bencher: Bencher<'_, '_>, machines: usize) {
    let hours = hours();
    let room = Room { volume: 40.0, changes: 0.5, envelope: 200.0, holds: 4e6, water: 0.0, heat: Heat::None, dehumidifier: None };
    let body = Body { area: 3.0, holds: 124e3, convection: 3.0, radiation: 4.6, cover: None, wear: Wear::default() };
    let bodies = vec![body; machines];
    bencher.bench_local(|| simulate(divan::black_box(&hours), &room, &bodies, 12));
}
