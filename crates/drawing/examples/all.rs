//! Writes every machine with all its points onto one page, to be looked at: `cargo run -p drawing --example all > all.html`.

use std::io::Write;

use reference::Reference;

fn main() -> std::io::Result<()> {
    let mut out = std::io::stdout().lock();
    writeln!(out, "<!DOCTYPE html><meta charset=\"utf-8\"><title>Drawings</title>")?;
    for template in Reference::embedded().templates.values() {
        let points: Vec<_> = template.points.iter().map(|point| point.name.as_str()).collect();
        writeln!(out, "<h2>{}</h2>{}", template.title, drawing::draw(Some(&template.name), &points).svg)?;
    }
    let own: Vec<_> = (1..=40).map(|number| format!("own point {number}")).collect();
    let own: Vec<_> = own.iter().map(String::as_str).collect();
    writeln!(out, "<h2>Without a template</h2>{}", drawing::draw(None, &own).svg)
}
