// A simulated class of two hundred: what was planted must come out, and nothing else.
#include "records_support.hpp"
#include "simulated_class.hpp"

#include <cstdlib>

using namespace matula;
using namespace matula::judging;
using test::SimulatedClass;

namespace {

const Basis& basis() {
  static const Basis read = [] {
    const auto loaded = load_basis(assets::folder());
    INFO((loaded ? "" : scenario::to_text(loaded.error())));
    REQUIRE(loaded);
    return *loaded;
  }();
  return read;
}

const SimulatedClass& simulated() {
  static const SimulatedClass made = test::ClassMaker(basis()).make();
  return made;
}

/// The class in a store, and judged from there.
const ClassView& view() {
  static const test::Scratch scratch("matula_class");
  static const ClassView judged = [] {
    records::Store store((scratch / "class.db").string());
    store.add_all(simulated().sittings, 1764244800);
    if (const char* copy = std::getenv("MATULA_CLASS_STORE")) { // To be looked at in the window.
      store.back_up(copy);
    }
    return judge(store, {}, basis());
  }();
  return judged;
}

const TestAgreement& test_of(const std::string& key) {
  for (const auto& one : view().tests) {
    if (one.test == key) {
      return one;
    }
  }
  FAIL("no test " + key);
  return view().tests.front();
}

const ItemView& item_of(const std::string& exercise, const std::string& name) {
  for (const auto& one : view().cases) {
    for (const auto& item : one.items) {
      if (one.exercise == exercise && item.item == name) {
        return item;
      }
    }
  }
  FAIL("no item " + name);
  return view().cases.front().items.front();
}

const learner::GroupLines* group_of(const std::vector<learner::GroupLines>& lines, const std::string& key) {
  const auto found = std::find_if(lines.begin(), lines.end(), [&](const auto& g) { return g.key == key; });
  return found == lines.end() ? nullptr : &*found;
}

/// Whether it is told of a reader that 1+ is written for what shows 2+.
bool told_of_two_plus(const StudentView& student) {
  const auto* clouds = group_of(student.lines, "clouds");
  return clouds != nullptr && clouds->lines.size() == 5 &&
         clouds->lines[2].sentence.find("still write 1+") != std::string::npos;
}

} // namespace

TEST_CASE("A class's confusion is what was written, test by test") {
  statistics::PairTable counted(6);
  int missed = 0;
  for (const auto& sat : simulated().sittings) {
    for (const auto& mark : sat.report.marks) {
      if (mark.item == "ssa.grade") {
        counted.add(static_cast<std::size_t>(mark.graded->truth),
                    static_cast<std::size_t>(*mark.graded->read));
        missed += mark.graded->missed_finding ? 1 : 0;
      }
    }
  }
  const auto& ssa = test_of("ssa");
  CHECK(ssa.table.counts() == counted.counts());
  CHECK(ssa.readings == 4800);
  CHECK(ssa.students == 200);
  CHECK(ssa.missed_findings == missed);
  CHECK(view().readings == 3 * 4800);
  const auto linear = statistics::agreement_weights(statistics::Weighting::Linear, 6);
  REQUIRE((ssa.kappa_linear && ssa.kappa_quadratic && ssa.gwet_linear && ssa.plain));
  CHECK(ssa.kappa_linear->value == statistics::cohen_kappa(counted, linear)->value);
  CHECK(ssa.plain->bias == statistics::plain_agreement(counted)->bias);
  for (const auto* figure : {&ssa.kappa_linear, &ssa.kappa_quadratic, &ssa.gwet_linear}) {
    REQUIRE((*figure)->interval);
    CHECK((*figure)->interval->low < (*figure)->value);
    CHECK((*figure)->interval->high > (*figure)->value);
    CHECK((*figure)->interval->high - (*figure)->interval->low < 0.05);
  }
}

TEST_CASE("Twenty who read low at 2+ are told of, and hardly anybody else") {
  int told = 0;
  int told_falsely = 0;
  for (const auto& student : view().students) {
    const int number = std::stoi(student.sum.pseudonym.substr(8));
    const bool is_low = number < SimulatedClass::low_readers;
    told += is_low && told_of_two_plus(student) ? 1 : 0;
    told_falsely += !is_low && told_of_two_plus(student) ? 1 : 0;
  }
  CHECK(view().students.size() == 200);
  CHECK(told >= 18);
  CHECK(told_falsely <= 3);
  // The class as a whole: a tenth of it reads low there, which pulls the line by about a tenth of 0.9 grade.
  const auto* clouds = group_of(view().lines, "clouds");
  REQUIRE(clouds != nullptr);
  REQUIRE(clouds->lines.size() == 5);
  CHECK(clouds->lines[2].own.value > 2.53);
  CHECK(clouds->lines[2].own.value < 2.75);
  CHECK(clouds->lines[2].sentence.empty());
  // Row 2+ of the confusion leans to 1+, its neighbours do not.
  const auto& table = test_of("heat").table;
  const auto below = [&](std::size_t truth) {
    return table.count(truth, truth - 1) / (table.count(truth, truth) + table.count(truth, truth - 1));
  };
  CHECK(below(3) > below(2) + 0.04);
  CHECK(below(3) > below(4) + 0.04);
}

TEST_CASE("An item keyed wrongly and one that everybody misses are named, sound ones are not") {
  const auto& keyed = item_of("case-0", SimulatedClass::keyed_wrongly);
  REQUIRE(keyed.with_rest);
  CHECK(*keyed.with_rest < -0.1);
  CHECK(keyed.favourite_wrong == "protein");
  CHECK(keyed.behaved_badly.find("wrote \"protein\"") != std::string::npos);
  CHECK(keyed.behaved_badly.find("keyed right") != std::string::npos);
  const auto& missed = item_of("case-1", SimulatedClass::missed_by_all);
  CHECK(missed.right < 0.06);
  CHECK(missed.favourite_wrong == "culture");
  CHECK(missed.behaved_badly.find("not taught") != std::string::npos);
  int named = 0;
  for (const auto& one : view().cases) {
    for (const auto& item : one.items) {
      named += item.item.rfind("decision.sound", 0) == 0 && !item.behaved_badly.empty() ? 1 : 0;
    }
  }
  CHECK(named == 0); // Of 192.
  // As statistics::analyse_items has it, on the marks of the case.
  const auto& first = view().cases.front();
  CHECK(first.exercise == "case-0");
  REQUIRE(first.kr20);
  CHECK(*first.kr20 > 0.4);
  CHECK(first.students == 200);
}

TEST_CASE("A class that swaps yellow and orange is told so, and of no other pair") {
  REQUIRE(view().swaps.size() == 5);
  for (const auto& swap : view().swaps) {
    INFO(swap.one << " and " << swap.other << ": " << swap.swapped << " of " << swap.tubes << ", explained "
                  << swap.explained);
    CHECK((swap.one == "yellow") == !swap.sentence.empty());
  }
}

TEST_CASE("Faults are counted by their roots") {
  const auto found = std::find_if(view().faults.begin(), view().faults.end(),
                                  [](const auto& f) { return f.root == "process.heat.boil"; });
  REQUIRE(found != view().faults.end());
  CHECK(found->students == SimulatedClass::early_heaters);
  CHECK(found->times == SimulatedClass::early_heaters);
  CHECK(found->lost == 10 * SimulatedClass::early_heaters);
  CHECK(found->label == "Boiling in the heat test");
  int lost = 0;
  for (const auto& fault : view().faults) {
    lost += fault.lost;
  }
  int expected = 0;
  for (const auto& sat : simulated().sittings) {
    for (const auto& mark : sat.report.marks) {
      expected += mark.possible - mark.earned;
    }
  }
  CHECK(lost == expected);
}

TEST_CASE("A missed finding is never averaged away, wherever the line stands") {
  const records::StandingCount good{900, 0, true, false, true, 1};
  const records::StandingCount missed{800, 1, false, false, true, 1};
  const records::StandingCount stopped{900, 0, false, true, true, 1};
  const records::StandingCount low{580, 0, false, false, true, 1};
  const records::StandingCount nothing_read{0, 0, false, false, false, 7};
  const auto standard = standard_of({good, missed, stopped, low, nothing_read}, basis());
  CHECK(standard.sittings == 4);
  CHECK(standard.mark == 600);
  CHECK(standard.passed == 1);
  CHECK(standard.failed_by_findings == 1);
  CHECK(standard.failed_by_safety == 1);
  CHECK(standard.borderline == 1);
  for (const auto& step : standard.steps) {
    CHECK(step.passed == (step.mark <= 580 ? 0.5 : step.mark <= 900 ? 0.25 : 0.0));
    CHECK(step.by_mean == (step.mark <= 580 ? 1.0 : step.mark <= 800 ? 0.75 : step.mark <= 900 ? 0.5 : 0.0));
  }
  // And in the class: the five planted ones, and whoever else missed one.
  int expected = 0;
  for (const auto& sat : simulated().sittings) {
    const auto& standing = sat.report.standing;
    expected += standing.mean >= 600 && standing.missed_findings > 0 ? 1 : 0;
  }
  CHECK(view().standard.failed_by_findings == expected);
  CHECK(expected >= SimulatedClass::missers);
  CHECK(view().standard.steps.front().passed >= view().standard.steps.back().passed);
}

TEST_CASE("The class view of one student, one case or one label holds no other's") {
  const test::Scratch scratch("matula_scope");
  records::Store store((scratch / "class.db").string());
  const std::vector<records::Marked> some(simulated().sittings.begin(), simulated().sittings.begin() + 96);
  store.add_all(some, 1);
  CHECK(judge(store, {"case-3", "", ""}, basis()).sittings == 4);
  CHECK(judge(store, {"case-3", "", ""}, basis()).readings == 12);
  CHECK(judge(store, {"", "", "student-001"}, basis()).readings == 72);
  CHECK(judge(store, {"", "", "student-001"}, basis()).students.size() == 1);
  CHECK(judge(store, {"", "simulated", ""}, basis()).readings == 288);
  CHECK(judge(store, {"", "nothing", ""}, basis()).readings == 0);
  // Items of all cases at once only up to a size; of one case, or when they are asked for, always.
  auto small = basis();
  small.rules.sittings_at_once = 1;
  CHECK(judge(store, {}, basis()).cases.size() > 1);
  CHECK_FALSE(judge(store, {}, basis()).cases_left_out);
  CHECK(judge(store, {}, small).cases.empty());
  CHECK(judge(store, {}, small).cases_left_out);
  CHECK(judge(store, {}, small, Items::All).cases.size() > 1);
  CHECK(judge(store, {"case-3", "", ""}, small).cases.size() == 1);
  CHECK_FALSE(judge(store, {"case-3", "", ""}, small).cases_left_out);
  CHECK(judge(store, {"none", "", ""}, basis()).faults.empty());
}
