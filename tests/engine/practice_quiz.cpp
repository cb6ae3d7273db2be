#include "practice_support.hpp"

#include "engine/practice/maker.hpp"
#include "engine/practice/quiz_log.hpp"

#include <fmt/format.h>

#include <fstream>
#include <set>

using namespace matula;
using namespace matula::practice;
using test::store;

namespace {

namespace fs = std::filesystem;

std::vector<Blueprint> shipped() {
  std::vector<Blueprint> all;
  for (const auto& file : blueprint_files(fs::path(MATULA_SOURCE_DIR) / "assets" / "quizzes")) {
    const auto blueprint = read_blueprint(file, store().rules, *store().standards);
    if (!blueprint) {
      FAIL(scenario::to_text(blueprint.error()));
    }
    all.push_back(*blueprint);
  }
  return all;
}

double mean_difficulty(const Quiz& quiz) {
  double sum = 0;
  for (const Unknown& unknown : quiz.unknowns) {
    sum += expected_difficulty(store(), unknown);
  }
  return sum / static_cast<double>(quiz.unknowns.size());
}

struct Folder {
  Folder() : path(fs::temp_directory_path() / "matula_quiz_test") { fs::remove_all(path); }
  ~Folder() { fs::remove_all(path); }
  fs::path path;
};

tl::expected<Blueprint, scenario::Problems> read_words(const Folder& folder, const std::string& words) {
  fs::create_directories(folder.path);
  std::ofstream(folder.path / "q.toml") << words;
  return read_blueprint(folder.path / "q.toml", store().rules, *store().standards);
}

} // namespace

TEST_CASE("A repeat draws new unknowns of equal difficulty") {
  const auto blueprints = shipped();
  REQUIRE(blueprints.size() >= 3);
  for (const Blueprint& blueprint : blueprints) {
    std::set<std::string> seen;
    std::multiset<std::string> first_cells;
    double least = 10;
    double most = -10;
    for (std::uint64_t seed = 1; seed <= 200; ++seed) {
      const Quiz quiz = make_quiz(store(), blueprint, seed);
      CHECK(static_cast<int>(quiz.unknowns.size()) == blueprint.size());
      std::multiset<std::string> cells;
      for (const Unknown& unknown : quiz.unknowns) {
        INFO(to_text(unknown));
        CHECK(seen.insert(to_text(unknown)).second);
        // The same tests, grades, rules and traps every time.
        cells.insert(fmt::format("{} {} {} {}", to_word(unknown.skill), unknown.what, unknown.trap,
                                 has_tubes(unknown.skill) ? std::lround(unknown.target) : 0));
      }
      first_cells = seed == 1 ? cells : first_cells;
      CHECK(cells == first_cells);
      const double mean = mean_difficulty(quiz);
      least = std::min(least, mean);
      most = std::max(most, mean);
    }
    INFO(fmt::format("{}: mean difficulty {:.3f} to {:.3f} over 200 sets", blueprint.key, least, most));
    CHECK(most - least <= 0.1); // Logits.
  }
}

TEST_CASE("The same blueprint and seed give the same set, and skills alternate where they can") {
  for (const Blueprint& blueprint : shipped()) {
    const Quiz quiz = make_quiz(store(), blueprint, 9);
    const Quiz again = make_quiz(store(), blueprint, 9);
    CHECK(
        std::equal(quiz.unknowns.begin(), quiz.unknowns.end(), again.unknowns.begin(), again.unknowns.end()));
    std::map<Skill, std::size_t> skills;
    for (const Unknown& unknown : quiz.unknowns) {
      ++skills[unknown.skill];
    }
    const bool can = std::all_of(skills.begin(), skills.end(), [&](const auto& one) {
      return one.second <= (quiz.unknowns.size() + 1) / 2;
    });
    for (std::size_t i = 1; can && i < quiz.unknowns.size(); ++i) {
      INFO(blueprint.key << " " << i);
      CHECK(quiz.unknowns[i].skill != quiz.unknowns[i - 1].skill);
    }
  }
}

TEST_CASE("What is made of a set is as hard as it was to be, too") {
  const auto blueprints = shipped();
  for (const std::uint64_t seed : {3U, 4U}) {
    const Quiz quiz = make_quiz(store(), blueprints.back(), seed);
    double sum = 0;
    for (const Unknown& unknown : quiz.unknowns) {
      const Item item = make_item(store(), unknown);
      const double by_eye = std::holds_alternative<FloatJar>(item.thing)
                                ? store().rules.difficulty.float_per_20_mm *
                                      std::abs(std::get<FloatJar>(item.thing).eye_mm) / 20
                                : 0;
      sum += item.difficulty - by_eye - expected_difficulty(store(), unknown);
    }
    CHECK(std::abs(sum / static_cast<double>(quiz.unknowns.size())) < 0.05);
  }
}

TEST_CASE("A blueprint is read strictly") {
  const Folder folder;
  const std::string head = "title = \"T\"\nabout = \"A\"\n";
  CHECK(read_words(folder,
                   head + "[[part]]\nskill = \"ring\"\ntests = [\"heller\"]\ngrades = [\"positive\"]\n"));
  const auto fails = [&](const std::string& part, const std::string& word) {
    const auto read = read_words(folder, head + "[[part]]\n" + part);
    REQUIRE_FALSE(read);
    INFO(scenario::to_text(read.error()));
    CHECK(scenario::to_text(read.error()).find(word) != std::string::npos);
  };
  fails("skill = \"ring\"\ntests = [\"heller\"]\ngrades = [\"2+\"]\n", "positive");
  fails("skill = \"ring\"\ntests = [\"ssa\"]\ngrades = [\"positive\"]\n", "rothera");
  fails("skill = \"copper\"\ntests = [\"benedict\"]\ngrades = [\"2+\"]\ntraps = [\"light\"]\n", "dark");
  fails("skill = \"copper\"\ntests = [\"benedict\"]\ngrades = [\"2+\"]\nfrom_line = 0.7\n", "0.5");
  fails("skill = \"reception\"\nfaults = [\"torn\"]\n", "unlabelled");
  fails("skill = \"reception\"\nfaults = [\"none\"]\nfrom_line = 0.2\n", "from_line");
  fails("skill = \"reception\"\nfaults = [\"none\"]\ncount = 61\n", "60");
}

TEST_CASE("A quiz that was killed keeps the answers already given, and no answer is given twice") {
  const Folder folder;
  const Quiz quiz = make_quiz(store(), shipped().front(), 2);
  fs::path file;
  {
    auto log = QuizLog::begin(folder.path, quiz);
    REQUIRE(log);
    file = log->file();
    CHECK(log->answer(0, {"refuse", "none"}, 12.5).empty());
    CHECK(log->answer(1, {"accept", ""}, 20).empty());
    CHECK_FALSE(log->answer(1, {"refuse", ""}, 21).empty());
  }
  // Killed at every byte of the last line: what was whole stays.
  std::ifstream in(file);
  const std::string whole((std::istreambuf_iterator<char>(in)), std::istreambuf_iterator<char>());
  const std::size_t last = whole.rfind('\n', whole.size() - 2) + 1;
  for (std::size_t bytes = last; bytes <= whole.size(); ++bytes) {
    std::ofstream(file, std::ios::binary) << whole.substr(0, bytes);
    auto log = QuizLog::resume(file);
    REQUIRE(log);
    CHECK(log->state().quiz.unknowns == quiz.unknowns);
    CHECK(log->state().replies[0] == Reply{"refuse", "none"});
    CHECK(log->state().replies[1].has_value() == (bytes == whole.size()));
    CHECK(log->answer(2, {"accept", "none"}, 30).empty());
    CHECK(read_quiz(file)->replies[2] == Reply{"accept", "none"});
    CHECK(read_quiz(file)->elapsed_s == 30);
    CHECK_FALSE(read_quiz(file)->finished);
    CHECK(log->finish(31).empty());
    CHECK(read_quiz(file)->finished);
    CHECK_FALSE(log->answer(3, {"accept", "none"}, 32).empty());
  }
  std::ofstream(file, std::ios::binary)
      << whole << "{\"answer\":0,\"reply\":[\"accept\"],\"elapsed_s\":40}\n";
  CHECK_FALSE(read_quiz(file));
}

TEST_CASE("Marks stay in their ledgers") {
  Judged one;
  const auto mark = [](scoring::Ledger ledger, int earned) {
    scoring::Mark made;
    made.ledger = ledger;
    made.earned = earned;
    made.possible = 10;
    return made;
  };
  one.marks.push_back(mark(scoring::Ledger::Reading, 8));
  one.marks.push_back(mark(scoring::Ledger::Safety, 0));
  Judged two;
  two.marks.push_back(mark(scoring::Ledger::Reading, 5));
  const auto sums = by_ledger({one, two});
  REQUIRE(sums.size() == 2);
  CHECK(sums[0].ledger == scoring::Ledger::Reading);
  CHECK(sums[0].earned == 13);
  CHECK(sums[0].possible == 20);
  CHECK(sums[1].ledger == scoring::Ledger::Safety);
}

TEST_CASE("The worker makes what is wanted ahead of need, the same thing as at once") {
  Maker maker(std::shared_ptr<const Store>(&store(), [](const Store*) {}));
  const Unknown first{Skill::Copper, "benedict", "plain", 2, 1};
  const Unknown second{Skill::Reception, "leaking", "plain", 0, 1};
  maker.want({first, second});
  const auto item = maker.now(second);
  (void)maker.now(first);
  REQUIRE(maker.ready(first));
  CHECK(std::get<HandedIn>(item->thing).delivery.leaking);
  CHECK(bench::state_hash(std::get<Tube>(maker.ready(first)->thing).state) ==
        bench::state_hash(std::get<Tube>(make_item(store(), first).thing).state));
  const Unknown torn{Skill::Reception, "torn", "plain", 0, 1};
  CHECK_THROWS(maker.now(torn));
  CHECK(maker.failed(torn));
  CHECK_FALSE(maker.failed(first));
  CHECK(maker.ready(second) == item);
}
