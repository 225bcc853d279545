//! The macros that compute a formula's step and show it from the same tokens.
//!
//! A chapter writes a step once, as ordinary Rust. The macro leaves that expression to be evaluated as it stands, and from the same
//! tokens makes, at compile time, the text and the MathML a sheet shows. What is shown can therefore not drift from what is computed.
//!
//! - `given!(r, T_1 [kelvin] = cool.at, "cool point");` binds `T_1` to the number of kelvins in `cool.at` and records it.
//! - `step!(r, nu [mm2_per_s] = x - 0.7, sources::ASTM_D341);` binds `nu` to the value of the expression and records the step.
//! - `solve!(r, nu [mm2_per_s] in (0.2, 1e6): Z(nu) == Z_0, sources::ASTM_D341);` binds `nu` to the root of the equation, found between
//!   the two bounds, and records the converged value with its residual.
//!
//! The brackets hold a `uom` unit, or the unit's text as a string literal for a number that has no type of its own, or nothing for a bare
//! number. The type parameter of the recorder has to be called `R`. Recording stands behind `if R::KEEPS`, so the silent recorder pays nothing.

mod input;
mod mathml;
mod node;
mod symbol;
mod text;

use proc_macro::TokenStream;

/// Binds a given quantity as a plain number in the unit named, and records its symbol, value, unit and words.
#[proc_macro]
pub fn given(tokens: TokenStream) -> TokenStream {
    finish(syn::parse::<input::Given>(tokens).map(|given| given.expand()))
}

/// Evaluates an expression, binds it to a symbol, and records the expression as text and MathML made from the same tokens.
#[proc_macro]
pub fn step(tokens: TokenStream) -> TokenStream {
    finish(syn::parse::<input::Step>(tokens).and_then(|step| step.expand()))
}

/// Solves an equation for one symbol between two bounds, binds the root, and records it with its residual.
#[proc_macro]
pub fn solve(tokens: TokenStream) -> TokenStream {
    finish(syn::parse::<input::Solve>(tokens).and_then(|solve| solve.expand()))
}

fn finish(result: syn::Result<proc_macro2::TokenStream>) -> TokenStream {
    result.unwrap_or_else(|error| error.to_compile_error()).into()
}
