//! The catalogue against published tables; each file in `reference` names its source in its first lines.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test may stop at the first surprise"
)]

mod lines;

use std::collections::BTreeSet;

use lines::table;
use risewright::catalogue::bearing::Bearing;
use risewright::catalogue::ends::Ends;
use risewright::catalogue::fastener::BoltClass;
use risewright::catalogue::friction::{PAIRS, Pair, RollingArm};
use risewright::catalogue::steel::{Metal, Section};
use risewright::catalogue::thread::{Series, Thread};
use risewright::catalogue::{Family, Row, Standing, Stock, Strength};
use risewright::design::Design;
use risewright::quantity::{Length, Stress};

#[track_caller]
fn close(got: f64, want: f64, tolerance: f64) {
    assert!((got - want).abs() <= tolerance, "{got} is not {want} within {tolerance}");
}

fn thread(name: &str) -> &'static Thread {
    Thread::rows().find(|thread| thread.name == name).unwrap_or_else(|| panic!("no thread {name}"))
}

/// Half a unit of the last printed decimal, and half a step of 1/1600 mm.
const PRINTED_MM: f64 = 0.0005 + 0.5 / 1600.0;
const PRINTED_IN: f64 = 0.00005 + 0.5 / 40_640.0;

#[test]
fn trapezoidal_threads_agree_with_iso_2904() {
    let table = table!("threads_trapezoidal");
    for line in table.rows() {
        let thread = thread(line.text("thread"));
        close(thread.major().to_mm(), line.number("d"), 1e-9);
        close(thread.pitch().to_mm(), line.number("P"), 1e-9);
        close(thread.mean().to_mm(), line.number("d2"), PRINTED_MM);
        close(thread.root().to_mm(), line.number("d3"), PRINTED_MM);
        close(thread.root_area() * 1e6, line.number("core_area"), 0.005);
        close(thread.lead_angle().to_degrees(), line.number("lead_angle"), 0.0005);
        close(thread.holding_friction(), line.number("holding_friction"), 5e-6);
        assert_eq!(thread.lead(), thread.pitch());
    }
    let single = Thread::rows().filter(|thread| thread.series == Series::Trapezoidal && thread.starts == 1);
    assert_eq!(single.count(), table.rows().len());
}

#[test]
fn two_starts_double_the_lead_and_what_it_takes_to_hold() {
    // Self-locking thresholds of Tr 20 x 4 and Tr 20 x 8 (P4): tan(lead angle) cos(15 deg) = 0.06833 and 0.13665,
    // computed from the closed form of Shigley 9e equation 8-3 with the flank angle of section 8-2.
    close(thread("Tr 20 x 4").holding_friction(), 0.06833, 5e-6);
    close(thread("Tr 20 x 8 (P4)").holding_friction(), 0.13665, 1e-5);
    assert_eq!(thread("Tr 20 x 8 (P4)").lead(), Length::mm(8.0));
    assert_eq!(thread("Tr 8 x 8 (P2)").lead(), Length::mm(8.0));
}

#[test]
fn metric_coarse_threads_agree_with_iso_724_and_iso_898_1() {
    for line in table!("threads_metric_coarse").rows() {
        let thread = thread(line.text("thread"));
        close(thread.mean().to_mm(), line.number("d2"), PRINTED_MM);
        close(thread.root().to_mm(), line.number("d3"), PRINTED_MM);
        close(thread.root_area() * 1e6, line.number("root_area"), 0.05);
        // ISO 898-1 prints three figures.
        close(thread.stress_area() * 1e6 / line.number("stress_area"), 1.0, 0.005);
    }
}

#[test]
fn unified_threads_agree_with_shigley_table_8_2() {
    const IN2: f64 = 0.0254 * 0.0254;
    for line in table!("threads_unc").rows() {
        let thread = thread(line.text("thread"));
        close(thread.major().to_inch(), line.number("d"), 1e-9);
        close(thread.pitch().to_inch(), 1.0 / line.number("tpi"), 0.5 / 40_640.0);
        close(thread.mean().to_inch(), line.number("pitch_diameter"), PRINTED_IN);
        // The book prints three or four figures.
        close(thread.stress_area() / IN2 / line.number("stress_area"), 1.0, 0.002);
        close(thread.root_area() / IN2 / line.number("root_area"), 1.0, 0.002);
    }
}

#[test]
fn acme_threads_agree_with_asme_b1_5() {
    for line in table!("threads_acme").rows() {
        let thread = thread(&format!("{} Acme", line.text("thread")));
        close(thread.mean().to_inch(), line.number("pitch_diameter"), PRINTED_IN);
        // The root lies below the basic minor diameter by the clearance alone: 0.020 in up to 10 threads an inch.
        let clearance = if line.number("tpi") <= 10.0 { 0.020 } else { 0.010 };
        close(thread.root().to_inch(), line.number("basic_minor_diameter") - clearance, PRINTED_IN);
        if let Some(degrees) = line.maybe("lead_degrees") {
            let printed = degrees + line.number("lead_minutes") / 60.0;
            // Printed to the minute, sometimes cut instead of rounded.
            close(thread.lead_angle().to_degrees(), printed, 1.0 / 60.0);
        }
    }
}

#[test]
fn the_threads_of_the_demos_are_there() {
    // Demo figures: Tr 20 x 4 with mean 18 and root 15.5 mm; 3/4-6 Acme with mean 16.93333 and root 14.30867 mm.
    let tr = thread("Tr 20 x 4");
    assert_eq!((tr.mean(), tr.root(), tr.lead()), (Length::mm(18.0), Length::mm(15.5), Length::mm(4.0)));
    let acme = thread("3/4-6 Acme");
    close(acme.mean().to_mm(), 16.933_33, 0.5 / 1600.0);
    close(acme.root().to_mm(), 14.308_67, 0.5 / 1600.0);
    close(acme.flank().to_radians(), 0.253_072_7, 1e-7);
}

fn stock(name: &str) -> &'static Stock {
    Stock::rows().find(|stock| stock.name == name).unwrap_or_else(|| panic!("no stock {name}"))
}

#[test]
fn strength_classes_agree_with_en_338() {
    let mut found = 0;
    for line in table!("en338").rows() {
        let name = line.text("class");
        let Some(stock) = Stock::rows().find(|stock| stock.name.ends_with(&format!("wood {name}"))) else {
            continue;
        };
        found += 1;
        close(stock.bending.to_mpa(), line.number("fm_k"), 1e-9);
        close(stock.modulus.to_mpa(), line.number("E0_mean"), 1e-9);
        close(stock.modulus_across.to_mpa(), line.number("E90_mean"), 1e-9);
        close(stock.shear_modulus.to_mpa(), line.number("G_mean"), 1e-9);
        close(stock.density.to_kg_m3(), line.number("rho_mean"), 1e-9);
        close(stock.density_low.unwrap().to_kg_m3(), line.number("rho_k"), 1e-9);
        close(stock.bearing_across.unwrap().to_mpa(), line.number("fc90_k"), 1e-9);
        close(stock.shear.unwrap().to_mpa(), line.number("fv_k"), 1e-9);
        assert_eq!(stock.strength, Strength::Characteristic);
        assert_eq!(stock.family == Family::Hardwood, name.starts_with('D'), "{name}");
    }
    assert_eq!(found, 12);
}

#[test]
fn species_agree_with_the_wood_handbook() {
    const PSI: f64 = 6894.757;
    let table = table!("wood_handbook_clear");
    let ratios = table!("wood_elastic_ratios");
    for line in table.rows() {
        let name = line.text("species");
        let stock = stock(name);
        // Pure bending: the handbook's modulus and ten per cent.
        close(stock.modulus.to_pa() / (line.number("MOE_Mpsi") * 1.10e6 * PSI), 1.0, 1e-6);
        close(stock.bending.to_pa() / (line.number("MOR_psi") * PSI), 1.0, 2e-5);
        // Mass at 12 % moisture is 1.12 times the oven-dry mass.
        close(stock.density.to_kg_m3(), line.number("gravity") * 1120.0, 0.051);
        for (got, want) in [(stock.bearing_across, "across_psi"), (stock.shear, "shear_psi")] {
            assert_eq!(got.is_some(), line.maybe(want).is_some(), "{name} {want}");
            if let (Some(got), Some(want)) = (got, line.maybe(want)) {
                close(got.to_pa() / (want * PSI), 1.0, 1e-4);
            }
        }
    }
    let species = Stock::rows().filter(|stock| stock.strength == Strength::ClearMean).count();
    assert_eq!(species, table.rows().len());

    for (name, printed) in [("Maple, sugar", "Maple, sugar"), ("Douglas-fir, coast", "Douglas-fir")] {
        let line = ratios.rows().find(|line| line.text("species") == printed).unwrap();
        let stock = stock(name);
        close(stock.modulus_across.to_pa() / stock.modulus.to_pa(), line.number("ET/EL"), 1e-5);
        let least = line.number("GLR/EL").min(line.number("GLT/EL"));
        close(stock.shear_modulus.to_pa() / stock.modulus.to_pa(), least, 1e-5);
    }
    let oak = ratios.rows().find(|line| line.text("species").starts_with("Oak, white")).unwrap();
    let stock = stock("Oak, white");
    close(stock.modulus_across.to_pa() / stock.modulus.to_pa(), oak.number("ET/EL"), 1e-5);
    close(stock.shear_modulus.to_pa() / stock.modulus.to_pa(), oak.number("GLR/EL"), 1e-5);
}

#[test]
fn panels_stay_within_the_wood_handbook_or_say_what_they_are() {
    let table = table!("wood_handbook_panels");
    let range = |panel: &str| table.rows().find(|line| line.text("panel") == panel).unwrap();
    for stock in Stock::rows().filter(|stock| stock.strength == Strength::Typical) {
        let line = range(match stock.family {
            Family::Plywood => "Plywood",
            Family::Lvl => "LVL",
            Family::Osb => "OSB",
            Family::Mdf => "MDF",
            Family::Softwood | Family::Hardwood => panic!("{} is no panel", stock.name),
        });
        // Birch all through is denser and stiffer than the mixed plywoods of the table.
        if stock.name.starts_with("Birch") {
            assert_eq!(stock.source.standing, Standing::Assumed);
        } else {
            let within = |value: f64, low, high| {
                let (low, high) = (line.number(low), line.number(high));
                assert!((low - 1e-3..=high + 1e-3).contains(&value), "{}: {value} {low} {high}", stock.name);
            };
            within(stock.density.to_kg_m3() / 1000.0, "SG_lo", "SG_hi");
            within(stock.modulus.to_gpa(), "MOE_lo", "MOE_hi");
            within(stock.bending.to_mpa(), "MOR_lo", "MOR_hi");
        }
        if stock.family == Family::Plywood {
            assert!(stock.advice.contains("check your sheet"), "{}", stock.name);
        }
    }
}

#[test]
fn plywood_thickness_is_what_the_caliper_shows() {
    let birch = table!("birch_plywood");
    for line in birch.rows() {
        let stock = stock(&format!("Birch plywood {} mm", line.text("nominal")));
        close(stock.measured.unwrap().to_mm(), line.number("mean"), 1e-9);
        close(stock.nominal.unwrap().to_mm(), line.number("nominal"), 1e-9);
        close(stock.density.to_kg_m3() / line.number("density"), 1.0, 0.025);
    }
    for line in table!("ps1_thickness").rows() {
        let stock = stock(&format!("Exterior softwood plywood {} in", line.text("category")));
        let measured = stock.measured.unwrap().to_inch();
        assert!(line.number("least") < measured && measured < line.number("most"));
    }
}

#[test]
fn the_stock_of_the_demos_is_there() {
    // Demo A: birch, E 9.0 GPa, G 0.62 GPa, 680 kg/m3; demo B: exterior plywood 23/32 in, 7.5, 0.50, 560.
    for (name, modulus, shear_modulus, density) in
        [("Birch plywood 18 mm", 9.0, 0.62, 680.0), ("Exterior softwood plywood 23/32 in", 7.5, 0.50, 560.0)]
    {
        let stock = stock(name);
        assert_eq!(stock.modulus, Stress::gpa(modulus));
        assert_eq!(stock.shear_modulus, Stress::gpa(shear_modulus));
        close(stock.density.to_kg_m3(), density, 1e-9);
        assert_eq!(stock.source.standing.words(), "assumed, deliberately cautious");
    }
}

#[test]
fn friction_agrees_with_the_published_ranges() {
    let table = table!("friction");
    let (rolling, sliding): (Vec<_>, Vec<_>) =
        table.rows().partition(|line| line.text("pair").starts_with("rolling"));
    // The tables keep the order of the reference within each kind of contact.
    assert_eq!(Pair::rows().count(), sliding.len());
    for (pair, line) in Pair::rows().zip(&sliding) {
        close(pair.range.0.value(), line.number("lo"), 1e-9);
        close(pair.range.1.value(), line.number("hi"), 1e-9);
        assert!(pair.range.0 <= pair.middle() && pair.middle() <= pair.range.1);
        assert_eq!(pair.source.standing, Standing::Read);
    }
    assert_eq!(RollingArm::rows().count(), rolling.len());
    for (arm, line) in RollingArm::rows().zip(&rolling) {
        close(arm.range.0.to_mm(), line.number("lo"), 1e-9);
        close(arm.range.1.to_mm(), line.number("hi"), 1e-9);
    }
    // What a design begins with lies within the range for oiled steel on bronze (Shigley table 8-5): the screw in its middle, pivots above it.
    let bronze = PAIRS.iter().find(|pair| pair.name == "Steel screw, oiled, bronze nut").unwrap();
    let design = Design::default();
    let (screw, pivot) = (design.drive.thread_friction, design.running.pin_friction);
    assert_eq!(bronze.middle(), screw);
    assert!(screw <= pivot && pivot <= bronze.range.1);
}

#[test]
fn bolts_agree_with_iso_898_1_and_sae_j429() {
    let iso = table!("iso898_1");
    let classes: Vec<&BoltClass> = BoltClass::rows().collect();
    for (class, line) in classes.iter().zip(iso.rows()) {
        assert!(class.name.starts_with(line.text("class").split(' ').next().unwrap()));
        close(class.tensile.to_mpa(), line.number("tensile"), 1e-9);
        close(class.yield_strength.to_mpa(), line.number("yield"), 1e-9);
        close(class.proof.to_mpa(), line.number("proof"), 1e-9);
    }
    let sae = table!("sae_j429");
    assert_eq!(classes.len(), iso.rows().len() + sae.rows().len());
    for (class, line) in classes[iso.rows().len()..].iter().zip(sae.rows()) {
        assert!(class.name.starts_with(&format!("Grade {}", line.text("grade"))));
        close(class.tensile.to_psi(), line.number("tensile_ksi") * 1e3, 0.1);
        close(class.yield_strength.to_psi(), line.number("yield_ksi") * 1e3, 0.1);
        close(class.proof.to_psi(), line.number("proof_ksi") * 1e3, 0.1);
    }
}

/// Threads and classes together: stress area times proof stress is the printed proof load.
#[test]
fn proof_and_breaking_loads_agree_with_iso_898_1() {
    for line in table!("iso898_1_loads").rows() {
        let thread = thread(line.text("thread"));
        close(thread.stress_area() * 1e6 / line.number("As_nom_mm2"), 1.0, 5e-3);
        for mark in ["4.6", "5.8", "8.8", "10.9", "12.9"] {
            let class = BoltClass::rows()
                .find(|class| class.name.split(' ').next() == Some(mark) && class.covers(thread.major()))
                .unwrap();
            let proof = class.proof.to_pa() * thread.stress_area();
            let breaking = class.tensile.to_pa() * thread.stress_area();
            // Loads are printed with three figures from an area of three figures.
            close(proof / line.number(&format!("Fp_{mark}_N")), 1.0, 0.01);
            close(breaking / line.number(&format!("Fm_min_{mark}_N")), 1.0, 0.01);
        }
    }
}

#[test]
fn bolt_classes_cover_their_sizes_once() {
    let at = |diameter| BoltClass::rows().filter(move |class| class.covers(diameter));
    let marks = |diameter, mark| at(diameter).filter(|class| class.name.starts_with(mark)).count();
    assert_eq!(marks(Length::mm(16.0), "8.8"), 1);
    assert_eq!(marks(Length::mm(18.0), "8.8"), 1);
    assert_eq!(marks(Length::inch(0.5), "Grade 5"), 1);
    assert_eq!(marks(Length::inch(1.25), "Grade 5"), 1);
    assert_eq!(marks(Length::inch(0.75), "Grade 2"), 1);
}

#[test]
fn sections_agree_with_worked_figures() {
    // Second moments worked out with the demo designs: 50 x 50 x 4 tube 26.1 cm4, 60 x 60 x 4 tube 47.1 cm4,
    // 1 1/2 x 0.120 in tube 8.8 cm4.
    let tube = |side, wall| Section::SquareTube { side, wall }.second_moment() * 1e8;
    close(tube(Length::mm(50.0), Length::mm(4.0)), 26.1, 0.06);
    close(tube(Length::mm(60.0), Length::mm(4.0)), 47.1, 0.06);
    let bar = Section::RoundBar { diameter: Length::inch(0.75) };
    close(tube(Length::inch(1.5), Length::inch(0.12)), 8.8, 0.06);
    // A 20 x 3 strap has 60 mm2: EA 12.6 MN at 210 GPa.
    let strap = Section::FlatBar { width: Length::mm(20.0), thickness: Length::mm(3.0) };
    close(strap.area() * 210e9 / 1e6, 12.6, 1e-9);
    // The section modulus of a round bar is pi d^3/32, of a solid square a^3/6.
    close(bar.section_modulus() / (std::f64::consts::PI * 0.01905_f64.powi(3) / 32.0), 1.0, 1e-12);
    let solid = Section::SquareTube { side: Length::mm(30.0), wall: Length::mm(15.0) };
    close(solid.section_modulus() / (0.03_f64.powi(3) / 6.0), 1.0, 1e-12);
}

#[test]
fn impossible_sections_have_no_stiffness() {
    let tube = |side, wall| Section::SquareTube { side: Length::mm(side), wall: Length::mm(wall) };
    let none = [
        tube(0.0, 1.0),
        tube(-5.0, 1.0),
        tube(20.0, 0.0),
        tube(20.0, -3.0),
        Section::RoundBar { diameter: Length::mm(-1.0) },
        Section::FlatBar { width: Length::mm(20.0), thickness: Length::ZERO },
    ];
    for section in none {
        for value in [section.area(), section.second_moment(), section.section_modulus()] {
            assert!(value == 0.0, "{section:?}: {value}");
        }
    }
    // A wall beyond the middle leaves a solid bar.
    assert!(tube(20.0, 15.0) != tube(20.0, 10.0));
    close(tube(20.0, 15.0).area(), tube(20.0, 10.0).area(), 1e-18);
}

fn numbered<R: Row>(table: &str, found: &mut Vec<(String, u16, String)>) {
    let mut ids = BTreeSet::new();
    for row in R::rows() {
        assert!(ids.insert(row.id()), "{table}: {} twice", row.id());
        assert!(R::by_id(row.id()).is_some_and(|again| again.name() == row.name()));
        found.push((table.to_owned(), row.id(), row.name().to_owned()));
    }
    assert!(R::by_id(0).is_none() && R::by_id(u16::MAX).is_none());
}

/// Numbers may be stored outside the program: a number once given stays with its row.
#[test]
fn numbers_of_rows_never_change_hands() {
    let mut rows = Vec::new();
    numbered::<Stock>("stock", &mut rows);
    numbered::<Thread>("thread", &mut rows);
    numbered::<Pair>("friction", &mut rows);
    numbered::<RollingArm>("rolling", &mut rows);
    numbered::<Metal>("metal", &mut rows);
    numbered::<BoltClass>("bolt", &mut rows);
    numbered::<Bearing>("bearing", &mut rows);
    numbered::<Ends>("ends", &mut rows);
    let published = table!("catalogue_numbers");
    for line in published.rows() {
        let id: u16 = line.text("id").parse().unwrap();
        assert!(
            rows.iter().any(|(table, row, name)| {
                table == line.text("table") && *row == id && name == line.text("name")
            }),
            "{} {id} no longer means {}",
            line.text("table"),
            line.text("name")
        );
    }
    assert_eq!(rows.len(), published.rows().len(), "enter new rows in the list as well");
}

#[test]
fn bearings_have_the_sizes_of_the_demos() {
    let bearing = |name: &str| Bearing::rows().find(|bearing| bearing.name == name).unwrap();
    // Thrust bearing of the metric demo: mean diameter 27.5 mm; wheels 20 x 42 x 12 mm, and 3/4 x 1 5/8 x 7/16 in.
    assert_eq!(bearing("51104").mean(), Length::mm(27.5));
    let wheel = bearing("6004-2RS");
    assert_eq!(
        (wheel.bore, wheel.outside, wheel.width),
        (Length::mm(20.0), Length::mm(42.0), Length::mm(12.0))
    );
    let wheel = bearing("R12");
    assert_eq!(
        (wheel.bore, wheel.outside, wheel.width),
        (Length::inch(0.75), Length::inch(1.625), Length::inch(0.4375))
    );
    for bearing in Bearing::rows() {
        assert!(bearing.bore < bearing.mean() && bearing.mean() < bearing.outside, "{}", bearing.name);
    }
}
