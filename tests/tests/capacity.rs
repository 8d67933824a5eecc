//! Formulas of strength against worked examples of handbooks, standards and lectures; the source stands beside each.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

mod lines;

use lines::table;
use risewright::catalogue::ends::Ends;
use risewright::catalogue::{Row, bearing};
use risewright::checks::column::{Column, euler};
use risewright::checks::dowel::{Bed, Mode, Plane, ec5, nds};
use risewright::checks::thread::{FIRST_TURN, Thread};
use risewright::checks::{allowed, bolt, crank, gaps, on_one_of, seat};
use risewright::design::{Design, WoodSort, set_ends};
use risewright::mechanics::stiffness;
use risewright::quantity::{Amount, Ratio};
use std::f64::consts::FRAC_PI_2;

const MM: f64 = 1e-3;
const MPA: f64 = 1e6;

#[track_caller]
fn close(have: f64, want: f64, tolerance: f64) {
    assert!((have - want).abs() <= tolerance * want.abs(), "have {have}, want {want}");
}

/// The load of a mode by its mark.
fn mode(modes: &[Mode], mark: &str) -> f64 {
    modes.iter().find(|mode| mode.mark == mark).unwrap_or_else(|| panic!("no mode {mark}")).load
}

/// Shigley's Mechanical Engineering Design 9e, table 4-2, page 183.
#[test]
fn end_conditions() {
    let constants: Vec<[f64; 3]> = Ends::rows().map(|row| row.constants).collect();
    assert_eq!(constants, [[0.25; 3], [1.0; 3], [2.0, 1.0, 1.2], [4.0, 1.0, 1.2]]);
    // K = 1/sqrt(C): a bar free at one end buckles over twice its length.
    let mut design = Design::default();
    set_ends(&mut design, Ends::by_id(101).unwrap());
    assert!((design.strength.screw_ends.value() - 2.0).abs() < 1e-9);
}

/// A link of Shigley 9e, example 4-19, page 187: statement and equations 4-44 and 4-48 read, widths worked out from them. 5000 lbf with a
/// factor of 4, Sy 75 ksi, E 30 Mpsi, C 1; inches and pounds throughout.
fn link(width: f64, depth: f64, length: f64) -> Column {
    Column {
        modulus: 30e6,
        yield_strength: 75e3,
        area: width * depth,
        gyration: depth / 12.0_f64.sqrt(),
        length,
    }
}

#[test]
fn links_slender_and_stout() {
    for (depth, width) in [(0.375, 3.4584), (0.4375, 2.1779), (0.5, 1.459), (0.5625, 1.0247)] {
        let link = link(width, depth, 15.0);
        assert!(link.slenderness() > link.stout_below());
        close(link.critical(), 20e3, 1e-4);
    }
    let stout = link(0.66214, 0.5, 8.0);
    assert!(stout.slenderness() < stout.stout_below());
    close(stout.critical(), 20e3, 2e-5);
}

/// Screws Tr 16 x 4 and Tr 20 x 4 between two bearings, by the same formulas: E 207 GPa, Sy 355 MPa.
#[test]
fn trapezoidal_screws_as_columns() {
    let column = |root: f64, length: f64| Column::round(root * MM, length * MM, 207e9, 355.0 * MPA);
    for (root, length, want) in
        [(11.5, 500.0, 7016.03), (11.5, 150.0, 32_513.1), (15.5, 500.0, 23_154.0), (15.5, 250.0, 54_873.6)]
    {
        close(column(root, length).critical(), want, 1e-5);
    }
    close(column(15.5, 1.0).stout_below(), 107.284, 1e-5);
    // The parabola meets the hyperbola at half the yield strength.
    let border = column(15.5, 1.0).stout_below() * 15.5 / 4.0;
    close(column(15.5, border).critical(), column(15.5, border).area * 355.0 * MPA / 2.0, 1e-9);
    close(euler(1.0, 1.0), std::f64::consts::PI.powi(2), 1e-15);
}

/// Shigley 9e, example 8-1, page 419: square thread 32 x 4, 6400 N, torque to raise 26.18 N m; equations read, figures worked out.
#[test]
fn a_square_thread_at_its_root() {
    let thread = Thread {
        root: 28.0 * MM,
        mean: 30.0 * MM,
        major: 32.0 * MM,
        pitch: 4.0 * MM,
        depth: 2.0 * MM,
        nut: 4.0 * MM,
    };
    let (force, torque) = (6400.0, 26.17695);
    close(thread.twist(torque), 6.0732 * MPA, 1e-3);
    close(thread.axial(force), 10.3938 * MPA, 1e-3);
    close(thread.pressure(FIRST_TURN * force), 12.9022 * MPA, 1e-3);
    close(thread.bending(FIRST_TURN * force), 41.4712 * MPA, 1e-3);
    close(thread.first_turn(force, torque), 48.6784 * MPA, 1e-3);
}

fn c24(thickness: f64, diameter: f64) -> Bed {
    let wood = ec5::Embedment::new(WoodSort::Softwood, 350.0, diameter * MM);
    Bed { thickness: thickness * MM, diameter: diameter * MM, strength: wood.at(0.0) }
}

/// Two members that touch.
fn touching(beds: [Bed; 2], yield_moment: f64) -> Plane {
    Plane { beds, gap: 0.0, yield_moment }
}

/// TKT4211 Timber Structures 1 (NTNU, H. Stamatopoulos), worked example C1: C24, dowel 12 mm of 600 MPa, wood 36 + 48 + 36 mm.
/// The example rounds the embedment strength to 25.3 MPa.
#[test]
fn wood_on_both_sides_of_wood() {
    let yield_moment = ec5::yield_moment(600.0 * MPA, 12.0 * MM);
    let modes = ec5::double_shear(&touching([c24(36.0, 12.0), c24(48.0, 12.0)], yield_moment));
    for (mark, printed, unrounded) in
        [("g", 10_930.0, 10_910.6), ("h", 7286.0, 7273.7), ("j", 6657.0, 6651.1), ("k", 9614.0, 9606.3)]
    {
        close(mode(&modes, mark), printed, 2e-3);
        close(mode(&modes, mark), unrounded, 1e-5);
    }
    assert_eq!(Mode::least(modes).mark, "j");
}

/// The same lecture, example C1: of the 6657 N of a dowel's worst mode 4609 N may be used for loads of short term indoors: k_mod 0.9, gamma_M
/// 1.3. (Its number of dowels in a row does not occur: a pivot is one bolt.)
#[test]
fn design_value_of_a_joint() {
    let mut design = Design::default();
    design.strength.duration = Ratio::of(0.9);
    design.strength.wood_safety = Ratio::of(1.3);
    let stress = |amount| if let Amount::Stress(pascals) = amount { pascals } else { panic!("{amount:?}") };
    let [bending, shear, pressed, bolts, bars, screw] = allowed(&design);
    for wood in [bending, shear, pressed] {
        close(stress(wood.used) / stress(wood.strength) * 6657.0, 4609.0, 1e-4);
    }
    // Steel knows neither duration nor damp.
    for (metal, safety) in [(bolts, 1.67), (bars, 1.67), (screw, 2.0)] {
        close(stress(metal.used) * safety, stress(metal.strength), 1e-9);
        assert!(metal.duration.is_none());
    }
}

/// The same lecture, example C4: GL32c (400 kg/m3, mean 440), dowel 12 mm of 400 MPa, 71 mm inside, 40 mm outside of steel.
#[test]
fn wood_against_steel() {
    let wood = ec5::Embedment::new(WoodSort::Softwood, 400.0, 12.0 * MM).at(0.0);
    let bed = |thickness: f64| Bed { thickness: thickness * MM, diameter: 12.0 * MM, strength: wood };
    let yield_moment = ec5::yield_moment(400.0 * MPA, 12.0 * MM);
    // Mode l of (8.13), the middle member crushed, is mode h of (8.7).
    close(mode(&ec5::double_shear(&touching([bed(71.0), bed(71.0)], yield_moment)), "h"), 12_311.0, 2e-3);
    close(mode(&ec5::against_steel(bed(71.0), yield_moment), "e"), 11_865.0, 2e-3);
    close(mode(&ec5::against_steel(bed(40.0), yield_moment), "d"), 8294.0, 2e-3);
    close(stiffness::slip(440.0, 12.0 * MM), 4815.0 * 1e3, 2e-3);
}

/// The same lecture: M12 of 400 and 800 MPa, M10 of 800 MPa.
#[test]
fn yield_moments() {
    for (d, tensile, want) in [(12.0, 400.0, 76_745.4), (12.0, 800.0, 153_490.8), (10.0, 800.0, 95_545.7)] {
        close(ec5::yield_moment(tensile * MPA, d * MM), want * 1e-3, 1e-5);
    }
}

/// The same lecture, examples C1, C2 and C5: a 12 mm bolt, force along the grain: 84 mm to the loaded end, 36 mm to the edge.
#[test]
fn distances_of_a_bolt() {
    let loaded = ec5::Distances::needed(12.0 * MM, 1.0, 0.0);
    close(loaded.end, 84.0 * MM, 1e-12);
    close(loaded.edge, 36.0 * MM, 1e-12);
    // Pressed away from the end 4 d, up to 30 degrees either side; straight across (1 + 6) d and, to the loaded edge, 4 d.
    close(ec5::Distances::needed(12.0 * MM, -1.0, 0.5).end, 48.0 * MM, 1e-12);
    let across = ec5::Distances::needed(12.0 * MM, -1e-9, 1.0);
    close(across.end, 84.0 * MM, 1e-6);
    close(across.edge, 48.0 * MM, 1e-6);
    // 80 mm is the least to a loaded end, however thin the bolt.
    close(ec5::Distances::needed(8.0 * MM, 1.0, 0.0).end, 80.0 * MM, 1e-12);
}

/// EN 1995-1-1, 8.30 to 8.36 and table 7.1, worked out from the formulas; plywood by a formula from memory.
#[test]
fn embedment_slip_and_yield_moment_of_common_stock() {
    for line in table!("ec5_embedment").rows() {
        let member = line.text("member");
        let sort = match member {
            _ if member.starts_with("plywood") => WoodSort::Plywood,
            _ if member.contains(" D") => WoodSort::Hardwood,
            _ => WoodSort::Softwood,
        };
        let d = line.number("d_mm") * MM;
        let wood = ec5::Embedment::new(sort, line.number("rho_k"), d);
        close(wood.at(0.0), line.number("fh_0_k_MPa") * MPA, 2e-4);
        close(wood.at(1.0), line.number("fh_90_k_MPa") * MPA, 2e-4);
        close(ec5::yield_moment(400.0 * MPA, d), line.number("My_Rk_fu400_Nmm") * 1e-3, 1e-4);
        close(ec5::yield_moment(800.0 * MPA, d), line.number("My_Rk_fu800_Nmm") * 1e-3, 1e-4);
    }
}

/// One shear plane: the two wood members may change places, and at equal ones a stiff bolt tilts: (sqrt 2 - 1) f_h d t.
#[test]
fn one_shear_plane() {
    let held = |beds, yield_moment| Mode::least(ec5::single_shear(&touching(beds, yield_moment)));
    let (thin, thick) = (c24(20.0, 12.0), Bed { strength: 17.0 * MPA, ..c24(45.0, 12.0) });
    for yield_moment in [0.1, 1.0, 10.0, 100.0, 1e4] {
        let one = held([thin, thick], yield_moment);
        let other = held([thick, thin], yield_moment);
        close(one.load, other.load, 1e-12);
        assert_eq!(one.mark == "c", other.mark == "c");
    }
    let crushed = thin.strength * thin.thickness * thin.diameter;
    let tilted = held([thin, thin], 1e4);
    assert_eq!(tilted.mark, "c");
    close(tilted.load, (2.0_f64.sqrt() - 1.0) * crushed, 1e-12);
}

/// The members apart, by balance alone. A stiff bolt that tilts in two equal members presses the inner part of each one way and the outer part the
/// other: of a thickness t the part x next to the gap g with 2 x - t = P / q, and both couples in balance. Solved here by halving, not by the
/// quadratic. Far apart, a bolt that bends in both members carries its two yield moments over the gap.
#[test]
fn members_apart() {
    let bed = Bed { thickness: 36.0 * MM, diameter: 16.0 * MM, strength: 30.0 * MPA };
    let line = bed.strength * bed.diameter;
    for gap in [0.0, 4.0 * MM, 56.0 * MM] {
        // What is left of the couple of all four pressures about the middle of the gap, for a load.
        let unbalanced = |load: f64| {
            let inner = 0.5 * (bed.thickness + load / line);
            let outer = bed.thickness - inner;
            let near = gap / 2.0 + inner / 2.0;
            let far = gap / 2.0 + inner + outer / 2.0;
            line * (inner * near - outer * far)
        };
        let (mut low, mut high) = (0.0, line * bed.thickness);
        for _ in 0..100 {
            let middle = 0.5 * (low + high);
            if unbalanced(middle) > 0.0 { high = middle } else { low = middle }
        }
        let plane = Plane { beds: [bed; 2], gap, yield_moment: 1e4 };
        close(mode(&ec5::single_shear(&plane), "c"), low, 1e-9);
        close(mode(&nds::single_shear(&plane, 0.0), "II"), low / 3.6, 1e-9);
    }
    let far = Plane { beds: [Bed { strength: 1e6 * bed.strength, ..bed }; 2], gap: 0.5, yield_moment: 100.0 };
    close(mode(&ec5::single_shear(&far), "f") / 1.15, 2.0 * 100.0 / 0.5, 1e-3);
    close(mode(&nds::single_shear(&far, 0.0), "IV") * 3.2, 2.0 * 100.0 / 0.5, 1e-3);
}

/// More wood, denser wood, a thicker or a stiffer bolt: no mode holds less, in either code.
#[test]
fn more_of_anything_never_holds_less() {
    let held = |d: f64, bolt: f64, thickness: f64, density: f64| {
        let wood = ec5::Embedment::new(WoodSort::Softwood, density, d * MM).at(0.7);
        let bed =
            |times: f64, strength: f64| Bed { thickness: times * thickness * MM, diameter: d * MM, strength };
        let yields = ec5::yield_moment(600.0 * MPA, bolt * MM);
        let bearing = nds::Bearing::new(density / 1120.0, d * MM).at(0.7);
        let moment = nds::yield_moment(500.0 * MPA, bolt * MM);
        let planks = touching([bed(1.0, wood), bed(1.4, wood)], yields);
        let boards = touching([bed(1.4, bearing), bed(1.0, bearing)], moment);
        [
            Mode::least(ec5::single_shear(&planks)).load,
            Mode::least(ec5::double_shear(&planks)).load,
            Mode::least(ec5::against_steel(bed(1.0, wood), yields)).load,
            Mode::least(nds::single_shear(&boards, 0.77)).load,
            Mode::least(nds::double_shear(&boards, 0.77)).load,
            nds::against_steel(bed(1.0, bearing), 0.77).load,
        ]
    };
    for d in [8.0, 12.0, 20.0, 28.0] {
        for thickness in [8.0, 18.0, 36.0, 60.0] {
            let less = held(d, 0.6 * d, thickness, 400.0);
            for more in [
                held(1.1 * d, 0.6 * d, thickness, 400.0),
                held(d, 0.8 * d, thickness, 400.0),
                held(d, 0.6 * d, 1.3 * thickness, 400.0),
                held(d, 0.6 * d, thickness, 550.0),
            ] {
                assert!(
                    less.iter().zip(&more).all(|(less, more)| *more >= less * (1.0 - 1e-12)),
                    "{d} {thickness}"
                );
            }
        }
    }
}

const INCH: f64 = 0.0254;
const LBF: f64 = 4.448_221_615_260_5;
const PSI: f64 = LBF / (INCH * INCH);

/// NDS 2018, table 12.3.3: G 0.5 gives 5600 psi along, 3157.6 psi across a 1/2 in bolt; the table rounds to 50 psi.
#[test]
fn dowel_bearing_strength() {
    let wood = nds::Bearing::new(0.5, 0.5 * INCH);
    close(wood.at(0.0), 5600.0 * PSI, 1e-3);
    close(wood.at(1.0), 3157.6 * PSI, 1e-3);
    for line in table!("nds_double_shear").rows() {
        let rounded = nds::Bearing::new(line.number("G"), line.number("D_in") * INCH).across / PSI;
        assert!((rounded - line.number("Fe_perp_psi")).abs() <= 25.0);
    }
}

/// NDS 2018, table 12F, by the formulas of tables 12.3.1A and 12.3.1B; printed values were not read.
#[test]
fn double_shear_by_the_nds() {
    for line in table!("nds_double_shear").rows() {
        let diameter = line.number("D_in") * INCH;
        let bed = |thickness: &str, bearing: &str| Bed {
            thickness: line.number(thickness) * INCH,
            diameter,
            strength: line.number(bearing) * PSI,
        };
        let yield_moment = nds::yield_moment(45e3 * PSI, diameter);
        let (along, across) = ("Fe_par_psi", "Fe_perp_psi");
        // For both planes together, as the table has it.
        let held = |angle, main, side| {
            let plane = touching([bed("tm_in", main), bed("ts_in", side)], yield_moment);
            2.0 * Mode::least(nds::double_shear(&plane, angle)).load / LBF
        };
        close(held(0.0, along, along), line.number("Zpar_calc_lb"), 1e-3);
        close(held(FRAC_PI_2, along, across), line.number("Zsperp_calc_lb"), 1e-3);
        close(held(FRAC_PI_2, across, along), line.number("Zmperp_calc_lb"), 1e-3);
    }
}

/// Least gaps by ISO 13854:2017 (EN 349), as given by AUVA.
#[test]
fn least_gaps() {
    // The table's own order: body, head, leg, foot, toes, arm, hand and fist, finger.
    let mut published = [500.0, 300.0, 180.0, 120.0, 50.0, 120.0, 100.0, 25.0];
    published.sort_unstable_by(|one: &f64, other| other.total_cmp(one));
    assert_eq!(gaps::BODY.len(), published.len());
    for (part, millimetres) in gaps::BODY.iter().zip(published) {
        close(part.gap, millimetres * MM, 1e-12);
    }
}

/// EN 1570-1, scope; trade guidance of caster makers: 150 kg on a table of 60 kg put 70 kg on each of four casters.
#[test]
fn speed_of_a_lift_and_load_of_a_caster() {
    close(crank::LIFT_SPEED, 0.15, 0.0);
    close(on_one_of(4, 150.0 + 60.0), 70.0, 1e-12);
}

/// Ivergård and Hunt, Handbook of Control Room Design and Ergonomics, 5.3.4; tables of human force: standing at a crank of 0.4 m, 130 N at
/// 25 turns a minute are 136.1 W.
#[test]
fn cranks_and_people() {
    close(crank::comfortable(0.150), 45.0, 0.0);
    close(crank::comfortable(0.060), 22.0, 0.0);
    let (force, radius, turns) = crank::STANDING;
    close(crank::power(force * radius, turns), 136.1, 0.01);
}

/// ISO 76: static safety is rating over load.
#[test]
fn static_safety_of_a_bearing() {
    let rated = bearing::BEARINGS.iter().find(|row| row.name == "51104").unwrap();
    let rating = rated.static_load.unwrap().to_n();
    close(seat::static_safety(rating, rating / 4.0), 4.0, 1e-12);
}

/// Statics: a pin on two outer members, their middles 25 mm to either side, under 2 kN spread over 20 mm. The half of it, cut at
/// its middle, has 1 kN at 25 mm against 1 kN whose middle is at 5 mm.
#[test]
fn a_pin_in_a_fork() {
    close(bolt::fork_moment(2e3, [25.0 * MM; 2], 20.0 * MM), 1e3 * (25.0 - 5.0) * MM, 1e-12);
    // A member of no width presses at one point: the beam of twice 25 mm, F l / 4; off its middle F a b / l.
    close(bolt::fork_moment(2e3, [25.0 * MM; 2], 0.0), 2e3 * 50.0 * MM / 4.0, 1e-12);
    close(bolt::fork_moment(2e3, [20.0 * MM, 80.0 * MM], 0.0), 2e3 * 20.0 * 80.0 / 100.0 * MM, 1e-12);
}
