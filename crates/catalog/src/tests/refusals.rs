//! Every fault of a file is refused with file, row and field.

use crate::*;

fn read(text: &str) -> Result<Catalog, CatalogError> {
    let mut files = builtin::FILES.to_vec();
    files.push(DataFile {
        name: "mine.json",
        text,
    });
    Catalog::read(&files, builtin::LITERATURE)
}

fn clearing(fields: &str) -> String {
    format!(
        r#"{{"table": "clearings", "every_row": {{"sources": ["a"], "known": "read"}}, "rows": [{{{fields}}}]}}"#
    )
}

fn fault_of(text: &str) -> (String, String, Fault) {
    match read(text) {
        Err(CatalogError::Field {
            file,
            row,
            field,
            fault,
        }) => {
            assert_eq!(file, "mine.json");
            (row, field, fault)
        }
        other => panic!("expected a fault in a field, got {:?}", other.err()),
    }
}

const GOOD: &str =
    r#""id": "fan", "name": "fan", "depth_factor": 0.6, "wet": false, "cools": true"#;

#[test]
fn a_good_row_of_ones_own_is_taken() {
    let catalog = read(&clearing(GOOD)).expect("good");
    let row = catalog.clearing("fan").expect("there");
    assert_eq!(
        (row.cools, row.sources.len(), row.known),
        (true, 1, Origin::Read)
    );
}

#[test]
fn faults_are_named_with_row_and_field() {
    let cases = [
        (
            GOOD.replace("0.6", "\"deep\""),
            "depth_factor",
            Fault::NotANumber,
        ),
        (
            GOOD.replace("0.6", "-0.6"),
            "depth_factor",
            Fault::NotPositive,
        ),
        (
            GOOD.replace("0.6", "null"),
            "depth_factor",
            Fault::NotANumber,
        ),
        (GOOD.replace("\"wet\": false, ", ""), "wet", Fault::Missing),
        (GOOD.replace("false", "0"), "wet", Fault::NotAFlag),
        (
            GOOD.replace("\"name\": \"fan\"", "\"name\": \" \""),
            "name",
            Fault::Empty,
        ),
        (
            GOOD.replace("\"name\": \"fan\"", "\"name\": 3"),
            "name",
            Fault::NotText,
        ),
        (
            format!("{GOOD}, \"dept_factor\": 1"),
            "dept_factor",
            Fault::Surplus,
        ),
        (
            format!("{GOOD}, \"cautions\": \"mist\""),
            "cautions",
            Fault::NotAList,
        ),
        (format!("{GOOD}, \"sources\": []"), "sources", Fault::Empty),
        (
            format!("{GOOD}, \"known\": \"sure\""),
            "known",
            Fault::NotAChoice,
        ),
    ];
    for (fields, field, fault) in cases {
        assert_eq!(
            fault_of(&clearing(&fields)),
            ("fan".to_owned(), field.to_owned(), fault),
            "{fields}"
        );
    }
}

#[test]
fn a_row_without_an_id_is_named_by_its_place() {
    let text = clearing(&GOOD.replace("\"id\": \"fan\", ", ""));
    assert_eq!(
        fault_of(&text),
        ("#1".to_owned(), "id".to_owned(), Fault::Missing)
    );
}

#[test]
fn ranges_and_ladders_must_be_in_order() {
    let machines = include_str!("../../../../shared/data/machines.json");
    let text = machines.replacen("\"id\": \"belt_router\"", "\"id\": \"mine\"", 1);
    let first = text.find("screw_router").expect("two machines");
    let only = format!(
        "{}\n  ]\n}}",
        text[..first].rsplit_once(',').expect("comma").0
    );
    assert!(read(&only).is_ok(), "{:?}", read(&only).err());
    for (from, to, field, fault) in [
        (
            "[0.05, 0.2, 0.5]",
            "[0.2, 0.05, 0.5]",
            "stiffness_n_per_um",
            Fault::OutOfOrder,
        ),
        (
            "[0.05, 0.2, 0.5]",
            "[0.05, 0.2]",
            "stiffness_n_per_um",
            Fault::NotAList,
        ),
        (
            "[0.05, 0.2, 0.5]",
            "[0.0, 0.2, 0.5]",
            "stiffness_n_per_um",
            Fault::NotPositive,
        ),
        (
            "[20000, 0.6]",
            "[9000, 0.6]",
            "curve_rpm_kw",
            Fault::OutOfOrder,
        ),
        (
            "[0.5, 0.65, 0.8]",
            "[0.5, 0.65, 1.8]",
            "efficiency",
            Fault::OutOfBounds,
        ),
        (
            "\"feed_reliable_mm_per_min\": 2500",
            "\"feed_reliable_mm_per_min\": 9500",
            "feed_reliable_mm_per_min",
            Fault::OutOfOrder,
        ),
    ] {
        let wrong = only.replacen(from, to, 1);
        assert_ne!(wrong, only, "{from} is not in the file");
        assert_eq!(
            fault_of(&wrong),
            ("mine".to_owned(), field.to_owned(), fault),
            "{to}"
        );
    }
}

#[test]
fn what_is_no_table_is_refused() {
    for text in [
        "[]",
        "{}",
        "3",
        r#"{"table": "moons", "rows": [{"id": "io"}]}"#,
        r#"{"table": "holds", "rows": [1]}"#,
    ] {
        assert_eq!(
            read(text).err(),
            Some(CatalogError::NotATable {
                file: "mine.json".to_owned()
            }),
            "{text}"
        );
    }
    assert_eq!(
        read("{\n  \"table\": }").err(),
        Some(CatalogError::NotJson {
            file: "mine.json".to_owned(),
            line: 2,
            column: 12
        })
    );
    let huge = clearing(&GOOD.replace("0.6", "1e999"));
    assert!(matches!(read(&huge), Err(CatalogError::NotJson { .. })));
}

#[test]
fn an_id_stands_once() {
    let twice = clearing(&GOOD.replace("\"id\": \"fan\"", "\"id\": \"air\""));
    assert_eq!(
        read(&twice).err(),
        Some(CatalogError::TwiceTheSame {
            file: "mine.json".to_owned(),
            row: "air".to_owned()
        })
    );
}

#[test]
fn a_missing_or_unknown_number_is_refused() {
    let without: Vec<DataFile<'_>> = builtin::FILES
        .iter()
        .copied()
        .filter(|f| f.name != "numbers.json")
        .collect();
    assert_eq!(
        Catalog::read(&without, "").err(),
        Some(CatalogError::NoSuchRow {
            table: "numbers",
            row: NUMBER_IDS[0].to_owned()
        })
    );
    let row = |id: &str, unit: &str| {
        format!(
            r#"{{"table": "numbers", "rows": [{{"id": "{id}", "value": 1, "unit": "{unit}", "sources": ["a"], "known": "read", "note": "n"}}]}}"#
        )
    };
    assert_eq!(fault_of(&row("luck", "1")).1, "id");
    assert_eq!(
        fault_of(&row("luck_mm", "um")),
        ("luck_mm".to_owned(), "unit".to_owned(), Fault::NotAChoice)
    );
}

#[test]
fn messages_name_the_place() {
    let error = read(&clearing(&GOOD.replace("0.6", "-1"))).expect_err("wrong");
    assert_eq!(
        error.to_string(),
        "mine.json: row fan: depth_factor is not positive"
    );
}

#[test]
fn a_file_that_is_cut_off_is_refused_wherever_it_ends() {
    for file in builtin::FILES {
        let whole = file.text.trim_end();
        for end in (0..whole.len())
            .step_by(251)
            .filter(|end| whole.is_char_boundary(*end))
        {
            let cut = DataFile {
                name: file.name,
                text: &whole[..end],
            };
            let error = Catalog::read(&[cut], "").err();
            assert!(
                matches!(error, Some(CatalogError::NotJson { .. })),
                "{} up to {end}: {error:?}",
                file.name
            );
        }
    }
}
