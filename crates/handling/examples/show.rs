//! x
use handling::label::*;
use reference::Reference;
fn main() {
    let r = Reference::embedded();
    for f in r.fluids.values() {
        let l = of_fluid(f, r);
        println!(
            "## {} {:?} {:?} {:?}\n  P {:?}",
            f.key,
            l.signal,
            l.pictograms.iter().map(|p| p.code()).collect::<Vec<_>>(),
            l.hazards.iter().map(|h| h.code.as_str()).collect::<Vec<_>>(),
            l.precautions.iter().map(|h| h.code.as_str()).collect::<Vec<_>>()
        );
        for n in &l.notes {
            println!("  - {n}");
        }
        for n in &l.never_with {
            println!("  never {} ({})", n.what, n.why);
        }
        let s = draw(&l, 52.0, 74.0);
        std::fs::write(format!("/tmp/lab/labels/{}.svg", f.key), s).unwrap();
    }
}
