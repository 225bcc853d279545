//! How long it takes to judge the points of a very large shop: 1500 points against every fluid of the data.

use divan::{Bencher, black_box};
use planner::needs::{Working, kinds, needs};
use planner::verdict::grade;
use reference::Reference;
use shop::Shop;

fn main() {
    divan::main();
}

/// Seventy-nine bench lathes have 1501 points.
fn large() -> Shop {
    let text: String = (0..79).map(|number| format!("[[machine]]\ntemplate = \"bench lathe\"\nname = \"lathe {number}\"\n")).collect();
    let text = format!("{text}[[work]]\njob = \"mark\"\n");
    shop::read(text.as_bytes(), kinds(), Reference::embedded()).expect("the shop is sound")
}

#[divan::bench]
fn work_out_the_needs(bencher: Bencher<'_, '_>) {
    let shop = large();
    bencher.bench(|| needs(black_box(&shop), Reference::embedded(), Working::Dropped).map(|needs| needs.len()));
}

#[divan::bench]
fn judge_every_fluid_at_every_point(bencher: Bencher<'_, '_>) {
    let (shop, reference) = (large(), Reference::embedded());
    let needs = needs(&shop, reference, Working::Dropped).expect("the shop can be worked out");
    bencher.bench(|| {
        let grades = needs.iter().flat_map(|need| reference.fluids.values().map(move |fluid| grade(need, fluid, reference)));
        black_box(grades.filter(|grade| grade.serves()).count())
    });
}
