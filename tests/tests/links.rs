//! Links and files: what is written can be read, what was written opens for ever, what is not ours is refused in words.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test stops at the first surprise")]

use proptest::prelude::*;
use risewright::design::{Demo, Design, Field};
use risewright::quantity::{Length, MOST_STEPS};
use risewright::share::Manner;
use risewright::share::address::{self, AddressFault, Opened, View};
use risewright::share::file::{self, Found, Kept};
use risewright::share::link::{LinkFault, READ_LIMIT, decode, encode};

/// The longest link a messenger with a limit of 2000 characters surely takes.
const WRITE_LIMIT: usize = 1800;

fn value_of(field: &'static Field) -> BoxedStrategy<i64> {
    if field.choices.is_empty() {
        (field.range.0..=field.range.1).boxed()
    } else {
        prop::sample::select(field.choices.iter().map(|(value, _)| *value).collect::<Vec<_>>()).boxed()
    }
}

/// Any design whose inputs lie in their ranges, whether it could stand or not.
fn any_design() -> impl Strategy<Value = Design> {
    let values = Design::fields().map(value_of).collect::<Vec<_>>();
    (values, "\\PC{0,80}").prop_map(|(values, name)| {
        let mut design = Design::default();
        for (field, value) in Design::fields().zip(values) {
            field.set(&mut design, value);
        }
        design.rename(&name);
        design
    })
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_link_gives_its_design_back(design in any_design()) {
        let text = encode(&design);
        prop_assert!(text.len() <= WRITE_LIMIT, "{} characters", text.len());
        prop_assert_eq!(decode(&text), Ok(design));
    }

    /// Every kind of value is a decimal number of its unit without rounding.
    #[test]
    fn a_file_gives_its_design_back(design in any_design()) {
        let text = file::write(&design, &Kept::default());
        let opened = file::Opened { design, kept: Kept::default() };
        prop_assert_eq!(file::read(&text), Ok(Found::Design(Box::new(opened))));
    }

    /// So it is far outside of every range.
    #[test]
    fn a_file_gives_any_number_back(steps in -MOST_STEPS..=MOST_STEPS) {
        let mut design = Design::default();
        for field in Design::fields().filter(|field| field.choices.is_empty()) {
            field.set(&mut design, steps);
        }
        let text = file::write(&design, &Kept::default());
        prop_assert!(matches!(file::read(&text), Ok(Found::Design(same)) if same.design == design));
    }

    #[test]
    fn any_text_is_opened_or_refused_in_words(text in "\\PC{0,200}") {
        if let Err(fault) = decode(&text) {
            prop_assert!(fault.to_string().ends_with('.'));
        }
        if let Err(fault) = address::read(&text) {
            prop_assert!(fault.to_string().ends_with('.'));
        }
    }

    #[test]
    fn a_damaged_link_never_panics(design in any_design(), at in 0_usize..400, sign in any::<char>()) {
        let mut text: Vec<char> = encode(&design).chars().collect();
        let at = at % text.len();
        text[at] = sign;
        let _ = decode(&text.into_iter().collect::<String>());
    }
}

#[test]
fn a_demo_is_one_letter() {
    for demo in Demo::ALL {
        assert_eq!(encode(&demo.design()), demo.letter().to_string());
        assert_eq!(decode(&demo.letter().to_string()), Ok(demo.design()));
    }
}

#[test]
fn keys_are_two_letters_and_never_shared() {
    let mut keys: Vec<&str> = Design::fields().map(|field| field.key).collect();
    assert!(keys.iter().all(|key| key.len() == 2 && key.bytes().all(|sign| sign.is_ascii_lowercase())));
    let all = keys.len();
    keys.sort_unstable();
    keys.dedup();
    assert_eq!(keys.len(), all);
}

#[test]
fn defaults_lie_in_their_ranges() {
    for field in Design::fields() {
        assert!(field.allows(field.default), "{}", field.label);
        assert_eq!(field.get(&Design::default()), field.default, "{}", field.label);
        assert!(field.meaning().ends_with('.'), "{}", field.label);
    }
}

/// Links as they were written by hand from the format's description; they must open for ever.
#[test]
fn frozen_links_open() {
    let mut longer = Design::default();
    longer.lift.arm_length = Length::mm(620.0);
    assert_eq!(decode("a.all9fk"), Ok(longer.clone()));
    longer.rename("Größer & schöner. 2");
    assert_eq!(decode("a.all9fk.~Gr%C3%B6%C3%9Fer%20%26%20sch%C3%B6ner%2E%202"), Ok(longer));
    let mut pulled = Demo::PottingBench.design();
    pulled.load.centre = Length::inch(-1.5);
    assert_eq!(decode("b.lx-1b1c"), Ok(pulled));
}

#[test]
fn refusals_say_why() {
    assert_eq!(decode(""), Err(LinkFault::Broken));
    assert_eq!(decode("c"), Err(LinkFault::Broken));
    assert_eq!(decode("a.al"), Err(LinkFault::Broken));
    assert_eq!(decode("a.al1Z"), Err(LinkFault::Broken));
    assert_eq!(decode("a.zz1"), Err(LinkFault::Unknown("zz".into())));
    assert_eq!(decode("a.alzzzzzzzzzzzzzzzzz"), Err(LinkFault::Broken));
    assert_eq!(decode("a.~%ff"), Err(LinkFault::Broken));
    assert_eq!(decode(&"a".repeat(READ_LIMIT + 1)), Err(LinkFault::TooLong));
    assert_eq!(address::read("#2/elevation/a"), Err(AddressFault::Newer));
    assert_eq!(address::read("#0/elevation/a"), Err(AddressFault::Link(LinkFault::Broken)));
    assert_eq!(address::read("#hello"), Err(AddressFault::Link(LinkFault::Broken)));
    assert_eq!(address::read(""), Ok(None));
    let opened = |manner| {
        Ok(Some(Opened { view: View::Elevation, manner, design: Some(Demo::PottingBench.design()) }))
    };
    assert_eq!(address::read("#1/elevation/b"), opened(Manner::default()));
    let bare = Manner { at: Some(Length::mm(742.5)), bare: true, embed: false };
    let text = address::write_in(View::Elevation, &bare, &Demo::PottingBench.design());
    assert_eq!(address::read(&text), opened(bare));
    assert_eq!(
        address::read("#1/elevation,bare,later/b"),
        opened(Manner { bare: true, ..Manner::default() })
    );
    assert_eq!(address::read("#1/elevation,at~/b"), opened(Manner::default()));
}

/// Every input at the end of its range that is longest to write, under the longest name: no link is longer.
#[test]
fn the_longest_link_keeps_to_the_limit() {
    let mut design = Design::default();
    design.rename(&"\u{1F6E0}".repeat(60));
    for field in Design::fields() {
        let ends = [field.range.0, field.range.1];
        let longest = ends.into_iter().max_by_key(|steps| steps.to_string().len()).unwrap();
        field.set(&mut design, longest);
    }
    let text = encode(&design);
    assert!(text.len() <= WRITE_LIMIT, "{} characters", text.len());
    assert_eq!(decode(&text), Ok(design));
}
