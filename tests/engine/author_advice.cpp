// Advice: each kind by a file with exactly that fault, and none for a file without one.
#include "author_support.hpp"

#include "engine/author/advice.hpp"
#include "engine/author/golden.hpp"

#include <filesystem>
#include <fstream>

using namespace matula;

namespace {

const std::string cases = MATULA_SOURCE_DIR "/scenarios/";

/// A case there is nothing to say of.
const std::string sound = R"(title = "T"
level = "first"
seed = 7
story = "S"
debrief = "D"
[patient]
name = "N"
age_sex = "30, male"
ward = "W"
request = "R"
specimen_note = "P"
[specimen]
volume = "60 mL"
temperature = "22 C"
ph = 6.0
yellow = 0.2
[specimen.dissolved]
urea = "280 mmol/L"
creatinine = "9 mmol/L"
sodium = "110 mmol/L"
potassium = "50 mmol/L"
ammonium = "30 mmol/L"
phosphate = "20 mmol/L"
sulphate = "16 mmol/L"
albumin = "150 mg/dL"
[bench]
room = "22 C"
reagents = ["water", "acetic_acid_10", "ssa_3", "benedict"]
[asked]
tests = ["look", "specific_gravity", "heat", "ssa", "benedict"]
[[decision]]
key = "meaning"
prompt = "What?"
right = "a"
why = "Because."
[decision.options]
a = "A"
b = "B"
)";

std::string with(std::string text, const std::string& from, const std::string& to) {
  const auto at = text.find(from);
  REQUIRE(at != std::string::npos);
  return text.replace(at, from.size(), to);
}

/// "kind: words" of everything that is said, a line each.
std::string advice_on(const std::string& text, const std::string& file = "case.toml") {
  const auto& shelf = test::shelf();
  const auto read = scenario::parse(text, file, shelf.world->catalogue);
  if (!read) {
    FAIL(scenario::to_text(read.error()));
  }
  std::string all;
  for (const auto& one :
       author::advise(shelf, *read, author::preview(shelf, *read), scenario::review_of(text))) {
    all += one.kind + ": " + one.words + "\n";
  }
  return all;
}

/// Exactly one thing is said, and it is of this kind.
void says_only(const std::string& text, const std::string& kind, const std::string& words) {
  const auto said = advice_on(text);
  INFO(said);
  CHECK(std::count(said.begin(), said.end(), '\n') == 1);
  CHECK_THAT(said, Catch::StartsWith(kind + ": ") && Catch::Contains(words));
}

} // namespace

TEST_CASE("of a sound case nothing is said") {
  CHECK(advice_on(sound) == "");
}

TEST_CASE("an asked test that nothing on the bench can finish") {
  const auto text =
      with(with(sound, "\"benedict\"]\n[asked]", "\"benedict\", \"barium_chloride_10\"]\n[asked]"),
           "\"ssa\", \"benedict\"]", "\"ssa\", \"benedict\", \"fouchet\"]");
  const auto needs = scenario::parse(text, "case.toml", test::shelf().world->catalogue);
  if (needs) {
    says_only(text, "unanswerable", "'fouchet' is not out");
  } else {
    // The reader itself asks for every bottle of this test.
    CHECK_THAT(scenario::to_text(needs.error()), Catch::Contains("fouchet"));
  }
  says_only(with(sound, "volume = \"60 mL\"", "volume = \"12 mL\""), "unanswerable", "specific gravity");
}

TEST_CASE("a trap without what settles it") {
  says_only(with(with(sound, "\"water\", ", ""), "room = \"22 C\"",
                 "room = \"22 C\"\nurinometer_zero_error = 0.002"),
            "trap", "a float that lies");
  const auto milk = with(sound, "albumin = ", "lactose = \"0.6 g/dL\"\nalbumin = ");
  says_only(milk, "trap", "lactose in place of glucose");
  CHECK(advice_on(with(milk, "\"benedict\"]\n[asked]", "\"benedict\", \"yeast_suspension\"]\n[asked]")) ==
        "");
}

TEST_CASE("weights that do not fit what is asked") {
  says_only(with(sound, "[[decision]]", "[weights]\neach_grade = 0\n[[decision]]"), "weights",
            "each_grade is 0");
  says_only(with(with(sound, "\"look\", \"specific_gravity\", ", ""), "[[decision]]",
                 "[weights]\nspecific_gravity = 30\n[[decision]]"),
            "weights", "nothing of the kind is asked for");
}

TEST_CASE("a question that no mark hangs on") {
  says_only(with(sound, "right = \"a\"", "right = \"a\"\nweight = 0"), "decision", "no mark hangs on it");
}

TEST_CASE("an answer on a line where one word alone is right") {
  const auto& shelf = test::shelf();
  // The dose at which this very urine stands a hair below the line from 1+ to 2+ by sulfosalicylic acid.
  double low = 60;
  double high = 200;
  const auto dosed = [](double dose) { return with(sound, "150 mg/dL", std::to_string(dose) + " mg/dL"); };
  for (int i = 0; i < 14; ++i) {
    const double middle = (low + high) / 2;
    const auto read = scenario::parse(dosed(middle), "case.toml", shelf.world->catalogue);
    const auto shown = author::preview(shelf, *read, {"ssa"});
    (*shown.shown().front().intensity < 2.47 ? low : high) = middle;
  }
  const auto on_line = dosed(low);
  CHECK_THAT(advice_on(on_line), !Catch::Contains("line: "));
  CHECK_THAT(advice_on(with(on_line, "[[decision]]", "[marking]\nreader_spread = 0.01\n[[decision]]")),
             Catch::Contains("line: Sulfosalicylic acid reads"));
}

TEST_CASE("a finding that the tubes do not show") {
  // Bilirubin that stood two days in an open, lit cup is bilirubin no more.
  const auto fouchet = [](const std::string& stood) {
    auto text = with(sound, "albumin = ", "bilirubin = \"0.3 mg/dL\"\nalbumin = ");
    text = with(text, "yellow = 0.2", "yellow = 0.2\nstood = \"" + stood + "\"");
    text =
        with(text, "\"benedict\"]\n[asked]",
             "\"benedict\", \"barium_chloride_10\", \"fouchet\", \"ammonium_sulphate_saturated\"]\n[asked]");
    return with(text, "\"ssa\", \"benedict\"]", "\"ssa\", \"benedict\", \"fouchet\"]");
  };
  CHECK_THAT(advice_on(fouchet("0 h")), !Catch::Contains("finding: "));
  CHECK_THAT(advice_on(fouchet("48 h")), Catch::Contains("finding: bilirubin 0.3 mg/dL is listed"));
}

TEST_CASE("what no patient passes") {
  says_only(with(sound, "creatinine = \"9 mmol/L\"", "creatinine = \"1 mmol/L\""), "physiology",
            "Urea over creatinine");
}

TEST_CASE("a case nobody else has looked at, and a changelog that stopped") {
  const std::string own = "[review]\nauthor = \"A\"\nreviewer = \"A\"\nversion = \"1\"\n[[decision]]";
  says_only(with(sound, "[[decision]]", own), "review", "No colleague");
  const std::string old =
      "[review]\nauthor = \"A\"\nreviewer = \"B\"\nversion = \"2\"\n[[review.change]]\nversion = "
      "\"1\"\ndate = \"2026-11-27\"\nwords = \"begun\"\n[[decision]]";
  says_only(with(sound, "[[decision]]", old), "review", "changelog is for 1");
}

TEST_CASE("a worked sitting is played again, and what differs is said") {
  const auto& shelf = test::shelf();
  const std::string text = [] {
    std::ifstream in(cases + "first_case.toml");
    const std::string all{std::istreambuf_iterator<char>(in), {}};
    return all.substr(0, all.find("[review]")); // Its own is looked at below.
  }();
  const auto review = [](const std::string& marks) {
    return "\n[review]\nauthor = \"A\"\nreviewer = \"B\"\nversion = \"1\"\n[[review.worked]]\nsteps = "
           "\"first_case.steps.jsonl\"\nmarks = " +
           marks + "\npassed = true\n";
  };
  const auto differences = [&](const std::string& marks) {
    const auto read =
        scenario::parse(text + review(marks), cases + "first_case.toml", shelf.world->catalogue);
    if (!read) {
      FAIL(scenario::to_text(read.error()));
    }
    return author::differs_from_worked(shelf, *read, scenario::review_of(text + review(marks)).value());
  };
  const auto wrong = differences("{ reading = 1 }");
  REQUIRE(wrong.size() == 1);
  CHECK_THAT(wrong.front(), Catch::Contains("1 stand in [review]"));
  const auto said = wrong.front();
  const auto at = said.find("earned ") + 7;
  CHECK(differences("{ reading = " + said.substr(at, said.find(' ', at) - at) + " }").empty());
}

TEST_CASE("the worked sittings of shipped cases earn what stands with them") {
  const auto& shelf = test::shelf();
  std::size_t worked = 0;
  for (const auto& entry : std::filesystem::directory_iterator(cases)) {
    if (entry.path().extension() != ".toml") {
      continue;
    }
    std::ifstream in(entry.path());
    const auto review = scenario::review_of({std::istreambuf_iterator<char>(in), {}});
    if (review) {
      INFO(entry.path());
      const auto read = scenario::load(entry.path(), shelf.world->catalogue);
      REQUIRE(read);
      CHECK(test::joined(author::differs_from_worked(shelf, *read, *review)).empty());
      worked += review->worked.size();
    }
  }
  CHECK(worked >= 1);
}

TEST_CASE("every shipped case is free of advice") {
  for (const auto& entry : std::filesystem::directory_iterator(cases)) {
    if (entry.path().extension() != ".toml") {
      continue;
    }
    std::ifstream in(entry.path());
    const std::string text{std::istreambuf_iterator<char>(in), {}};
    INFO(entry.path());
    CHECK(advice_on(text, entry.path().string()) == "");
  }
}
