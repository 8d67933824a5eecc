//! Twelve odd tables, invented, as links: `tests/reference/odd_designs.json`.
use risewright::design::Design;
use risewright::share::link;
use serde::Deserialize;

const ODD: &str = include_str!("../../reference/odd_designs.json");

#[derive(Deserialize)]
struct Collection {
    designs: Vec<Odd>,
}

#[derive(Deserialize)]
struct Odd {
    name: String,
    link: String,
}

/// Name and design of each.
pub fn designs() -> Vec<(String, Design)> {
    let odd: Collection = serde_json::from_str(ODD).unwrap();
    odd.designs.into_iter().map(|Odd { name, link }| (name, link::decode(&link).unwrap())).collect()
}
