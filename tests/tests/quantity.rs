//! Quantities as people write them, checked against the definitions of the units and what people mean.
//!
//! Outside facts used here: 1 in = 25.4 mm and 1 lb = 0.45359237 kg exactly (international yard and pound agreement,
//! 1959; NIST SP 811 appendix B), standard gravity 9.80665 m/s2 (3rd CGPM, 1901), hence the NIST SP 811 appendix B.8
//! factors 1 lbf = 4.448 222 N and 1 psi = 6.894 757 kPa, 1 lb/ft3 = 16.018 46 kg/m3, 1 lbf/in = 175.1268 N/m.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test may stop at the first surprise")]

use proptest::prelude::*;
use risewright::quantity::figures::{
    self, Figure, angle, drawn_force, factor, large_force, minutes, percent, sag, size, small_force, torque,
    turns,
};
use risewright::quantity::{
    Angle, Count, Density, Force, Kind, LONGEST, Length, MOST_STEPS, Mass, Money, Pace, Ratio, ReadError,
    Stiffness, Stress, Style, System, print, read,
};

const SYSTEMS: [System; 2] = [System::Metric, System::Inch];

/// Steps of 1/1600 mm in `mm`, by hand: no value here needs rounding beyond the sixth decimal.
fn mm(mm: f64) -> i64 {
    Length::mm(mm).steps()
}

#[test]
fn steps_hold_both_units_exactly() {
    // 0.01 mm is 16 steps, 1/64 in = 0.396875 mm is 635.
    assert_eq!(Length::mm(0.01).steps(), 16);
    assert_eq!(Length::inch(1.0 / 64.0).steps(), 635);
    assert_eq!(Length::inch(1.0), Length::mm(25.4));
    assert_eq!(Mass::lb(1.0), Mass::kg(0.453_592_37));
    assert_eq!(Ratio::percent(12.0), Ratio::of(0.12));
    assert_eq!(Stress::gpa(9.0), Stress::mpa(9000.0));
}

#[test]
fn units_agree_with_the_published_factors() {
    // NIST SP 811 appendix B.8, all to the digits printed there.
    let close = |got: f64, want: f64| assert!((got / want - 1.0).abs() < 5e-7, "{got} is not {want}");
    close(Force::lbf(1000.0).to_n(), 4448.222);
    close(Stress::psi(1e6).to_pa(), 6_894.757e6);
    close(Stiffness::lbf_per_inch(1e9).to_n_per_m(), 175.126_8e9);
    // Typed values meet the same factors on a road of their own.
    let typed = |text, kind| read(text, kind, System::Metric).unwrap();
    close(Force::from_steps(typed("1000 lbf", Kind::Force)).to_n(), 4448.222);
    close(Stress::from_steps(typed("1000000 psi", Kind::Stress)).to_pa(), 6_894.757e6);
    close(Stiffness::from_steps(typed("1e9 lbf/in", Kind::Stiffness)).to_n_per_m(), 175.126_8e9);
    // Steps of 0.1 kg/m3 in 16018.46.
    assert_eq!(typed("1000 lb/ft3", Kind::Density), 160_185);
}

#[test]
fn constructors_saturate_and_take_nan_for_zero() {
    assert_eq!(Length::mm(f64::NAN), Length::ZERO);
    assert_eq!(Length::mm(f64::INFINITY).steps(), i64::MAX);
    assert_eq!(Mass::kg(-1e300).steps(), i64::MIN);
    assert_eq!((Length::mm(f64::INFINITY) + Length::mm(1.0)).steps(), i64::MAX);
    assert_eq!((-Length::from_steps(i64::MIN)).steps(), i64::MAX);
    assert_eq!((Money::of(0.1) * 3).steps(), 30);
}

/// Text, kind, system, expected steps. The steps are worked out by hand from the definitions above.
#[test]
fn what_people_write_is_understood() {
    use System::{Inch, Metric};
    let lengths = [
        ("38", Metric, mm(38.0)),
        ("38", Inch, mm(965.2)),
        ("1/2", Inch, mm(12.7)),
        ("1/2", Metric, mm(0.5)),
        ("1 1/2\"", Metric, mm(38.1)),
        ("1-1/2 in", Metric, mm(38.1)),
        ("1 - 1/2 in", Metric, mm(38.1)),
        ("1  1/2  in.", Metric, mm(38.1)),
        ("1½\"", Metric, mm(38.1)),
        ("1 ½″", Metric, mm(38.1)),
        ("½ in", Metric, mm(12.7)),
        ("3/4 in", Metric, mm(19.05)),
        ("3⁄4 inch", Metric, mm(19.05)),
        ("23/32\"", Metric, mm(18.256_25)),
        ("3 31/32", Inch, mm(100.806_25)),
        ("4' 2 1/2\"", Metric, mm(1282.7)),
        ("4'2½\"", Metric, mm(1282.7)),
        ("4’ 2 1/2”", Metric, mm(1282.7)),
        ("4′ 2 1/2″", Metric, mm(1282.7)),
        ("4' 2 1/2''", Metric, mm(1282.7)),
        ("4'-2 1/2\"", Metric, mm(1282.7)),
        ("4 ft - 2 1/2 in", Metric, mm(1282.7)),
        ("4' 2", Metric, mm(1270.0)),
        ("4 ft 2 in", Metric, mm(1270.0)),
        ("4 FT 2 IN", Metric, mm(1270.0)),
        ("4ft2in", Metric, mm(1270.0)),
        ("4 ft. 2 in.", Metric, mm(1270.0)),
        ("4 ft .5 in", Metric, mm(1231.9)),
        ("4 feet", Inch, mm(1219.2)),
        ("4'", Inch, mm(1219.2)),
        ("-4' 2\"", Metric, mm(-1270.0)),
        ("38.1 mm", Inch, mm(38.1)),
        ("38.1mm", Inch, mm(38.1)),
        ("38.1\u{A0}MM", Inch, mm(38.1)),
        ("38.", Metric, mm(38.0)),
        (".5 in", Metric, mm(12.7)),
        (",5", Metric, mm(0.5)),
        ("0.9 m", Metric, mm(900.0)),
        ("0,9 m", Metric, mm(900.0)),
        ("0,900 m", Metric, mm(900.0)),
        ("00,900 m", Metric, mm(900.0)),
        (",900 m", Metric, mm(900.0)),
        ("1,20 m", Metric, mm(1200.0)),
        ("1.200 m", Metric, mm(1200.0)),
        ("1,2000 m", Metric, mm(1200.0)),
        ("62 cm", Metric, mm(620.0)),
        ("12\u{202F}000", Metric, mm(12_000.0)),
        ("12 000,5 mm", Metric, mm(12_000.5)),
        ("1 200", Metric, mm(1200.0)),
        ("1 100/200 in", Metric, mm(38.1)),
        ("+38", Metric, mm(38.0)),
        ("−38", Metric, mm(-38.0)),
        ("– 38", Metric, mm(-38.0)),
        ("-1 1/2 in", Metric, mm(-38.1)),
        ("8 thou", Metric, mm(0.2032)),
        ("1e3", Metric, mm(1000.0)),
        ("2.5E-1 m", Metric, mm(250.0)),
        ("≈1 7/16", Inch, mm(36.5125)),
        // One step is 0.000625 mm: a third of a millimetre is 533 and a third steps.
        ("1/3 mm", Metric, 533),
        ("0.00031 mm", Metric, 0),
        ("0.00032 mm", Metric, 1),
    ];
    for (text, system, steps) in lengths {
        assert_eq!(read(text, Kind::Length, system), Ok(steps), "{text:?} in {system:?}");
    }

    let others = [
        ("20 kg", Kind::Mass, Inch, Mass::kg(20.0).steps()),
        ("20", Kind::Mass, Metric, 2_000_000_000),
        ("45 lb", Kind::Mass, Metric, 45 * 45_359_237),
        ("45", Kind::Mass, Inch, 45 * 45_359_237),
        ("45#", Kind::Mass, Metric, 45 * 45_359_237),
        ("370 g", Kind::Mass, Metric, 37_000_000),
        // 12 oz = 3/4 lb = 0.3401942775 kg.
        ("12 oz", Kind::Mass, Metric, 34_019_428),
        ("2 lb 8 oz", Kind::Mass, Metric, Mass::lb(2.5).steps()),
        ("1.2 kN", Kind::Force, Metric, 1_200_000),
        ("1,2 kn", Kind::Force, Metric, 1_200_000),
        ("200 N", Kind::Force, Inch, 200_000),
        ("200", Kind::Force, Metric, 200_000),
        // 45 x 4.4482216152605 N = 200.16997 N.
        ("45 lbf", Kind::Force, Metric, 200_170),
        ("45 lb", Kind::Force, Metric, 200_170),
        ("45", Kind::Force, Inch, 200_170),
        ("9 GPa", Kind::Stress, Metric, 9_000_000),
        ("640 MPa", Kind::Stress, Metric, 640_000),
        ("640", Kind::Stress, Metric, 640_000),
        ("640 N/mm²", Kind::Stress, Metric, 640_000),
        // 92 ksi = 634.3177 MPa.
        ("92 ksi", Kind::Stress, Metric, 634_318),
        ("92 000", Kind::Stress, Inch, 634_318),
        ("680", Kind::Density, Metric, 6800),
        ("680 kg/m3", Kind::Density, Inch, 6800),
        ("0.68 g/cm³", Kind::Density, Metric, 6800),
        ("30", Kind::Pace, Metric, 300),
        ("30 rpm", Kind::Pace, Metric, 300),
        ("30 RPM", Kind::Pace, Inch, 300),
        ("30 /min", Kind::Pace, Metric, 300),
        ("30 1/min", Kind::Pace, Metric, 300),
        ("30/min", Kind::Pace, Metric, 300),
        ("1/2", Kind::Ratio, Metric, 50_000),
        ("12 %", Kind::Ratio, Metric, 12_000),
        ("12%", Kind::Ratio, Inch, 12_000),
        ("0.15", Kind::Ratio, Metric, 15_000),
        ("0,125", Kind::Ratio, Metric, 12_500),
        ("8", Kind::Count, Metric, 8),
        ("8/2", Kind::Count, Metric, 4),
        ("12.50", Kind::Money, Metric, 1250),
        ("€ 12,50", Kind::Money, Metric, 1250),
        ("12.5 $", Kind::Money, Inch, 1250),
        // 1.20 a foot of 0.3048 m are 3.937 a metre.
        ("€ 4,50", Kind::Rate, Metric, 450),
        ("4.50 a metre", Kind::Rate, Inch, 450),
        ("1.2", Kind::Rate, Inch, 394),
        ("$1.20 /ft", Kind::Rate, Metric, 394),
        ("14.5°", Kind::Angle, Metric, 1450),
        ("14.5 deg", Kind::Angle, Inch, 1450),
        ("17 kN/mm", Kind::Stiffness, Metric, 17_000),
        ("17 MN/m", Kind::Stiffness, Metric, 17_000),
        ("2", Kind::Choice, Metric, 2),
        ("Yes", Kind::Switch, Metric, 1),
        ("off", Kind::Switch, Metric, 0),
    ];
    for (text, kind, system, steps) in others {
        assert_eq!(read(text, kind, system), Ok(steps), "{text:?} as {kind:?} in {system:?}");
    }
}

#[test]
fn a_comma_before_three_digits_is_refused_with_both_readings() {
    let refused = |text, system| read(text, Kind::Length, system).unwrap_err();
    let offers = |text, system| refused(text, system).offers();
    let pair = |a: &str, b: &str, a_mm, b_mm| vec![(a.to_owned(), mm(a_mm)), (b.to_owned(), mm(b_mm))];
    assert_eq!(offers("1,200", System::Metric), pair("1200 mm", "1.200 mm", 1200.0, 1.2));
    assert_eq!(offers("1,200", System::Inch), pair("1200 in", "1.200 in", 30_480.0, 30.48));
    assert_eq!(offers("-1,200 m", System::Metric), pair("-1200 m", "-1.200 m", -1.2e6, -1200.0));
    assert_eq!(
        offers("4' 1,200\"", System::Metric),
        vec![("4' 1.200\"".to_owned(), mm(1219.2 + 30.48))],
        "1200 in after feet is no reading, and what is offered must be readable"
    );
    let sentence = refused("1,200", System::Metric).to_string();
    assert!(sentence.contains("1200 mm") && sentence.contains("1.200 mm"), "{sentence}");

    // Several marks group thousands in one way only, or in none.
    assert_eq!(offers("1,200.5", System::Metric), vec![("1200.5 mm".to_owned(), mm(1200.5))]);
    assert_eq!(offers("1.200,5 mm", System::Metric), vec![("1200.5 mm".to_owned(), mm(1200.5))]);
    assert_eq!(offers("1,200,000", System::Metric), vec![("1200000 mm".to_owned(), mm(1.2e6))]);
    assert_eq!(offers("1,2,3", System::Metric), vec![]);
}

#[test]
fn what_carries_over_is_refused_with_the_sum() {
    let offers = |text| read(text, Kind::Length, System::Inch).unwrap_err().offers();
    assert_eq!(offers("5' 14\""), vec![("74\u{A0}in".to_owned(), mm(74.0 * 25.4))]);
    assert_eq!(offers("1 3/2"), vec![("2 1/2\u{A0}in".to_owned(), mm(63.5))]);
    // The Swiss thousands mark is the same sign as the foot.
    assert_eq!(offers("1'200"), vec![("212\u{A0}in".to_owned(), mm(212.0 * 25.4))]);
}

#[test]
fn refusals_say_what_is_wrong_and_what_would_be_right() {
    let refused = |text: &str, kind| read(text, kind, System::Metric).unwrap_err().to_string();
    assert_eq!(
        refused("20 kg", Kind::Length),
        "kg is the unit of a weight; here a length is wanted, for example 38 mm or 1 1/2 in."
    );
    assert_eq!(
        refused("38 mm", Kind::Mass),
        "mm is the unit of a length; here a weight is wanted, for example 20 kg or 45 lb."
    );
    assert_eq!(
        refused("5 furlongs", Kind::Length),
        "“furlongs” is no known unit; a length is wanted, for example 38 mm or 1 1/2 in."
    );
    assert_eq!(
        refused("  ", Kind::Force),
        "Nothing is written here; a force is wanted, for example 200 N or 45 lbf."
    );
    assert_eq!(refused("2.5", Kind::Count), "“2.5” is not a whole number; the nearest is 3.");
    assert_eq!(refused("1/0", Kind::Length), "A fraction over zero has no value; write for example 1/2.");
    assert_eq!(refused("1 1/0", Kind::Length), "A fraction over zero has no value; write for example 1/2.");

    let not_understood = [
        "abc", "NaN", "inf", "-", "mm", "🙂", "5 🙂", "1/2/3", "1.5/2", "1.5 1/2", "--5", "5-", "1 2",
        "3 mm 4", "4' 2'", "4' x", "0x10", "²", "５", "1..2",
    ];
    for text in not_understood {
        let error = read(text, Kind::Length, System::Metric).unwrap_err();
        assert!(
            matches!(error, ReadError::NotUnderstood { .. } | ReadError::UnknownUnit { .. }),
            "{text:?}: {error:?}"
        );
    }
    for text in ["1e999", "1e13", "9999999999999999999999", "999999999999 m", "1/99999999999999999999"] {
        assert_eq!(read(text, Kind::Length, System::Metric), Err(ReadError::TooLarge), "{text:?}");
    }
    assert_eq!(read(&"1".repeat(LONGEST + 1), Kind::Length, System::Metric), Err(ReadError::TooLong));
    assert_eq!(read(&"0".repeat(LONGEST), Kind::Length, System::Metric), Ok(0));
}

#[test]
fn lengths_are_printed_as_a_shop_writes_them() {
    let short = |steps, system| print(steps, Kind::Length, system, Style::Short);
    let full = |steps, system| print(steps, Kind::Length, system, Style::Full);
    for (inches, number) in [
        (24.5, "24 1/2"),
        (1.4375, "1 7/16"),
        (0.718_75, "23/32"),
        (3.968_75, "3 31/32"),
        (0.015_625, "1/64"),
        (12.0, "12"),
        (-1.5, "−1 1/2"),
    ] {
        let printed = short(Length::inch(inches).steps(), System::Inch);
        assert_eq!((printed.number.as_str(), printed.unit, printed.rounded), (number, "in", false));
    }
    // 620 mm = 24.4094 in, nearest sixteenth 24 7/16 = 24.4375; 18 mm = 0.70866 in, nearest 64th 45/64 = 0.70313;
    // 0.2 mm = 0.00787 in.
    for (mm, number) in [(620.0, "≈24 7/16"), (18.0, "≈45/64"), (0.2, "≈0.008")] {
        let printed = short(Length::mm(mm).steps(), System::Inch);
        assert_eq!((printed.number.as_str(), printed.rounded), (number, true), "{mm} mm");
    }
    assert_eq!(short(mm(1220.0), System::Metric).text(), "1220\u{A0}mm");
    assert_eq!(short(mm(12_200.5), System::Metric).text(), "12\u{202F}200.5\u{A0}mm");
    let thickness = short(mm(18.256_25), System::Metric);
    assert_eq!((thickness.number.as_str(), thickness.rounded), ("18.26", true));

    assert_eq!(full(mm(38.1), System::Inch).text(), "1 1/2\u{A0}in");
    assert_eq!(full(mm(18.256_25), System::Metric).number, "18.256");
    assert_eq!(full(mm(18.0), System::Inch).number, "0.70866");
    assert_eq!(print(1250, Kind::Money, System::Metric, Style::Full).text(), "12.50");
    assert_eq!(print(450, Kind::Rate, System::Metric, Style::Full).text(), "4.5\u{A0}/m");
    assert_eq!(print(394, Kind::Rate, System::Inch, Style::Short).text(), "1.2\u{A0}/ft");
    assert_eq!(print(45 * 45_359_237, Kind::Mass, System::Inch, Style::Short).text(), "45\u{A0}lb");
    assert_eq!(print(1450, Kind::Angle, System::Inch, Style::Short).text(), "14.5°");
}

#[test]
fn figures_have_the_digits_a_reader_can_use() {
    use System::{Inch, Metric};
    let is = |figure: Figure, text: &str| assert_eq!(figure.to_string(), text.replace('_', "\u{A0}"));
    // kN with two decimals in tables and one on the drawing, hand forces in whole N, everything in whole lbf.
    is(large_force(7610.0, Metric), "7.61_kN");
    is(drawn_force(7610.0, Metric), "7.6_kN");
    is(small_force(130.4, Metric), "130_N");
    is(large_force(-7610.0, Metric), "−7.61_kN");
    // 1000 N = 224.809 lbf (NIST SP 811 appendix B.9).
    for force in [large_force, drawn_force, small_force] {
        is(force(1000.0, Inch), "225_lbf");
    }
    // Whole mm for sizes and one decimal for sag; sixteenths, and thousandths of an inch.
    is(size(0.5203, Metric), "520_mm");
    is(size(0.6223, Inch), "24 1/2_in");
    is(size(0.63, Inch), "24 13/16_in");
    is(size(-0.0381, Inch), "−1 1/2_in");
    is(sag(0.01304, Metric), "13.0_mm");
    is(sag(0.01304, Inch), "0.513_in");
    is(turns(64.17), "64.2_turns");
    // 5.5 N m = 48.68 lbf in.
    is(torque(5.5, Metric), "5.5_N_m");
    is(torque(5.5, Inch), "49_lbf_in");
    // What should vanish is a plain nought, and told where it does not.
    is(figures::left(torque(-1e-13, Metric)), "0_N_m");
    is(figures::left(torque(-0.06, Metric)), "−0.1_N_m");
    is(figures::left(small_force(f64::NAN, Metric)), "—_N");
    is(percent(0.0469), "5_%");
    is(figures::ratio(0.636), "0.64");
    is(factor(4.84), "4.8");
    is(angle(0.2617994), "15.0°");
    is(minutes(128.4), "2.1_min");
    // 1 MPa = 145.038 psi, 1 m2 = 10.7639 ft2, 100 kg = 220.46 lb, 1 N/mm = 5.7101 lbf/in.
    is(figures::stress(8.34e6, Metric), "8.3_MPa");
    is(figures::stress(10e6, Inch), "1450_psi");
    is(figures::area(1.95, Metric), "1.95_m²");
    is(figures::area(10.0, Inch), "107.64_ft²");
    is(figures::weight(46.04, Metric), "46.0_kg");
    is(figures::weight(100.0, Inch), "220_lb");
    is(figures::stiffness(1.0e6, Metric), "1000_N/mm");
    is(figures::stiffness(1.0e6, Inch), "5710_lbf/in");
    // A square of one inch, its section modulus 1/6 and second moment 1/12.
    let inch: f64 = 0.0254;
    is(figures::section_area(inch * inch, Inch), "1.000_in²");
    is(figures::section_area(36e-3 * 75e-3, Metric), "2700_mm²");
    is(figures::section_modulus(inch.powi(3) / 6.0, Inch), "0.1667_in³");
    is(figures::section_modulus(36e-3 * 75e-3 * 75e-3 / 6.0, Metric), "33\u{202F}750_mm³");
    is(figures::second_moment(inch.powi(4) / 12.0, Inch), "0.0833_in⁴");
    is(figures::speed(0.15, Metric), "150_mm/s");
    is(figures::speed(0.15, Inch), "5.91_in/s");
    is(figures::power(136.1), "136_W");
    // No sign on what rounds to zero, groups from 10 000 up, a dash where there is no value.
    is(sag(-0.00001, Metric), "0.0_mm");
    is(size(-0.0001, Inch), "0_in");
    is(small_force(9999.0, Metric), "9999_N");
    is(small_force(-12_345.0, Metric), "−12\u{202F}345_N");
    for none in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, f64::MAX] {
        is(large_force(none * 1e10, Inch), "—_lbf");
        is(size(none * 1e10, Inch), "—_in");
        is(percent(none), "—_%");
    }
}

#[test]
fn newtypes_are_stored_as_whole_steps() {
    let stored = serde_json::to_string(&(Length::mm(38.1), Count::of(2), Pace::per_minute(30.0))).unwrap();
    assert_eq!(stored, "[60960,2,300]");
    let back: (Length, Count, Pace) = serde_json::from_str(&stored).unwrap();
    assert_eq!(back, (Length::mm(38.1), Count::of(2), Pace::per_minute(30.0)));
    assert_eq!(Angle::degrees(14.5).steps(), 1450);
    assert_eq!(Density::kg_m3(680.0).steps(), 6800);
}

fn any_kind() -> impl Strategy<Value = Kind> {
    proptest::sample::select(Kind::ALL.to_vec())
}

fn any_system() -> impl Strategy<Value = System> {
    proptest::sample::select(SYSTEMS.to_vec())
}

/// Steps of every size, not only huge ones.
fn any_steps() -> impl Strategy<Value = i64> {
    prop_oneof![-MOST_STEPS..=MOST_STEPS, -100_000_000..=100_000_000_i64, -5000..=5000_i64]
}

/// Texts built from the pieces people use, in any order.
fn jumble() -> impl Strategy<Value = String> {
    let pieces = [
        "1",
        "0",
        "12",
        "200",
        "/",
        " ",
        "-",
        "−",
        ".",
        ",",
        "'",
        "\"",
        "½",
        "ft",
        "in",
        "mm",
        "kg",
        "lb",
        "oz",
        "e",
        "%",
        "min",
        "9999999999",
        "\u{202F}",
        "🙂",
        "N",
        "GPa",
        "m3",
        "+",
        "≈",
    ];
    proptest::collection::vec(proptest::sample::select(pieces.to_vec()), 0..14)
        .prop_map(|parts| parts.concat())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 10_000, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn full_print_reads_back_to_the_same_step(steps in any_steps(), kind in any_kind(), system in any_system()) {
        let steps = if kind == Kind::Switch { steps & 1 } else { steps };
        let printed = print(steps, kind, system, Style::Full);
        prop_assert!(!printed.rounded, "{printed:?}");
        prop_assert_eq!(read(&printed.text(), kind, system), Ok(steps), "{:?}", &printed);
        // The unit is the one a bare number has, so a field may show it beside the number.
        prop_assert_eq!(read(&printed.number, kind, system), Ok(steps), "{:?}", &printed);
        let other = if system == System::Metric { System::Inch } else { System::Metric };
        if !printed.unit.is_empty() {
            prop_assert_eq!(read(&printed.text(), kind, other), Ok(steps), "{:?}", &printed);
        }
    }

    #[test]
    fn short_print_reads_back_unless_it_says_rounded(
        steps in any_steps(), kind in any_kind(), system in any_system(),
    ) {
        let printed = print(steps, kind, system, Style::Short);
        let back = read(&printed.text(), kind, system);
        prop_assert_eq!(back == Ok(steps), !printed.rounded, "{:?} {:?}", &printed, back);
    }

    #[test]
    fn printing_never_panics(steps in any::<i64>(), kind in any_kind(), system in any_system()) {
        let _ = print(steps, kind, system, Style::Full);
        let _ = print(steps, kind, system, Style::Short);
    }

    #[test]
    fn any_text_is_read_or_refused(text in ".{0,70}", kind in any_kind(), system in any_system()) {
        if let Ok(steps) = read(&text, kind, system) {
            prop_assert!(steps.abs() <= MOST_STEPS);
        }
    }

    #[test]
    fn any_jumble_is_read_or_refused_and_offers_hold(
        text in jumble(), kind in any_kind(), system in any_system(),
    ) {
        match read(&text, kind, system) {
            Ok(steps) => prop_assert!(steps.abs() <= MOST_STEPS),
            Err(error) => {
                prop_assert!(!error.to_string().is_empty());
                for (offer, steps) in error.offers() {
                    prop_assert_eq!(read(&offer, kind, system), Ok(steps), "{}", offer);
                }
            }
        }
    }
}
