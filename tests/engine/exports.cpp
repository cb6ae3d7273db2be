// Every kind of file that leaves, made from a simulated class and from real sittings, and looked at by
// programs that know nothing of ours (exports_check.py).
#include "records_support.hpp"
#include "simulated_class.hpp"

#include "engine/export/csv.hpp"
#include "engine/export/fhir.hpp"
#include "engine/export/html.hpp"
#include "engine/export/xapi.hpp"

#include <cstdlib>

using namespace matula;

namespace {

constexpr int some_students = 40;

/// MATULA_EXPORTS names a folder to keep the files in, for a person to look at.
std::filesystem::path kept_folder(const test::Scratch& scratch) {
  const char* kept = std::getenv("MATULA_EXPORTS");
  return kept != nullptr ? std::filesystem::path(kept) : scratch / "files";
}

} // namespace

TEST_CASE("Files that leave are what others take them for") {
  const test::Scratch scratch("matula_exports");
  const auto folder = kept_folder(scratch);
  const auto basis = judging::load_basis(assets::folder());
  REQUIRE(basis);
  records::Store store((scratch / "class.db").string());
  auto made = test::ClassMaker(*basis).make().sittings;
  made.resize(static_cast<std::size_t>(some_students * test::SimulatedClass::cases));
  store.add_all(made, 1764244800);
  records::import_all(store, test::marker(),
                      {test::tiny_incoming("ada", test::tiny_log("1+", "yes")),
                       test::tiny_incoming("bo", test::tiny_log("negative", "no", 700))},
                      {"real", "", 2, 1764244800}, {});
  const auto codes = exports::load_codes(assets::folder());
  INFO((codes ? "" : scenario::to_text(codes.error())));
  REQUIRE(codes);

  exports::Csv evil({"a", "b", "c", "d", "e", "f", "g", "h"});
  evil.row({"=SUM(A1:A9)", "said \"no\"", "two\r\nlines", "+1", "-0.25", "@home", "\tTab", "a,b"});
  test::spill(folder / "evil.csv", evil.text());
  CHECK_THROWS_AS(evil.row({"too", "few"}), std::invalid_argument);

  const auto rows = store.sittings();
  const std::vector<records::SittingRow> some(rows.end() - 60, rows.end());
  const auto view = judging::judge(store, {}, *basis);
  const auto& tests = procedure::shipped_list();
  const std::string home = "https://school.invalid/class";
  using exports::For;
  test::spill(folder / "sittings.csv", exports::sittings_csv(rows, For::Teacher));
  test::spill(folder / "sittings-students.csv", exports::sittings_csv(rows, For::Student));
  test::spill(folder / "marks.csv", exports::marks_csv(store, some, For::Teacher));
  test::spill(folder / "marks-students.csv", exports::marks_csv(store, some, For::Student));
  test::spill(folder / "items.csv", exports::items_csv(view));
  test::spill(folder / "confusion.csv", exports::confusion_csv(view));
  test::spill(folder / "xapi.json", exports::statements(store, some, tests, home, For::Teacher));
  test::spill(folder / "xapi-students.json", exports::statements(store, some, tests, home, For::Student));
  CHECK(exports::statements(store, some, tests, home, For::Teacher) == test::slurp(folder / "xapi.json"));
  for (const auto& row : store.sittings({"", "real", ""})) {
    test::spill(folder / "fhir" / (row.pseudonym + ".json"),
                exports::report_bundle(row, store.marks(row), tests, *codes));
  }
  auto gravity = store.sittings({"", "real", ""})[0];
  test::spill(folder / "fhir" / "figures.json",
              exports::report_bundle(
                  gravity,
                  {{scoring::Ledger::Arithmetic, "sg.corrected", "Corrected", 5, 5, "", "1.023", "1.023"},
                   {scoring::Ledger::Reading, "esbach.value", "Esbach", 5, 5, "", "4", "4"},
                   {scoring::Ledger::Reading, "colour", "Colour", 5, 5, "", "dark yellow", "amber"},
                   {scoring::Ledger::Interpretation, "decision.meaning", "Meaning", 0, 5, "", "b", "a"}},
                  tests, *codes));
  test::spill(folder / "report.html",
              exports::class_page(view, {"Spring & autumn <b>Bobby</b>",
                                         "2027-09-30",
                                         {{"student-000", "Ada Example"}},
                                         {{3, "student-000", "tiny", {"chain: line <3> & more differ"}}}}));
  const std::string words = "python3 " MATULA_SOURCE_DIR "/tests/engine/exports_check.py " + folder.string() +
                            " > " + (scratch / "said").string() + " 2>&1";
  const int code = std::system(words.c_str());
  INFO(test::slurp(scratch / "said"));
  CHECK(code == 0);
}

TEST_CASE("Every code names an item the worksheet has, and a unit UCUM has") {
  const auto codes = exports::load_codes(assets::folder());
  REQUIRE(codes);
  CHECK(codes->by_item.size() >= 25);
  for (const auto& [item, code] : codes->by_item) {
    INFO(item);
    const auto& tests = procedure::shipped_list();
    const bool of_a_test =
        std::any_of(tests.begin(), tests.end(), [&](const auto& test) { return test.item() == item; });
    CHECK((of_a_test || item == "colour" || item == "clarity" || item == "odour" || item == "sg.corrected"));
    // A code ends in its check digit (Luhn's, modulo 10), as LOINC's user guide has it.
    int sum = 0;
    const auto dash = code.loinc.find('-');
    REQUIRE(dash != std::string::npos);
    for (std::size_t i = 0; i < dash; ++i) {
      const int digit = code.loinc[dash - 1 - i] - '0';
      const int doubled = i % 2 == 0 ? 2 * digit : digit;
      sum += doubled / 10 + doubled % 10;
    }
    CHECK((10 - sum % 10) % 10 == code.loinc[dash + 1] - '0');
    CHECK((code.ucum.empty() || code.ucum == "1" || code.ucum == "g/L" || code.ucum == "mg/dL"));
  }
}
