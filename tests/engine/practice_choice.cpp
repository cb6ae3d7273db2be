#include "practice_support.hpp"

#include "engine/learner/memory.hpp"
#include "engine/practice/quiz.hpp"
#include "sim/optics/random.hpp"

#include <fmt/format.h>

#include <cmath>
#include <set>

using namespace matula;
using namespace matula::practice;
using test::answered;
using test::store;

namespace {

constexpr std::int64_t morning_s = 1800000000;
const std::vector<Skill> everything{all_skills.begin(), all_skills.end()};

double normal(optics::Stream& stream) {
  double sum = -6;
  for (int i = 0; i < 12; ++i) {
    sum += stream.next();
  }
  return sum;
}

struct Spread {
  double square = 0;
  int count = 0;
  void add(double error) {
    square += error * error;
    ++count;
  }
  double rmse() const { return std::sqrt(square / count); }
};

enum class Way { AtRandom, ForPractice, ForMeasuring };

/// Answers of learners of known ability, as the model has them.
struct Run {
  std::map<int, Spread> error; ///< Of the estimate, after so many answers.
  int right = 0;
  int asked = 0;
};

/// The store with unknowns that half of the learner's answers are right to.
const Store& even_odds() {
  static const Store other = [] {
    Store copy = store();
    copy.rules.choice.chance_right = 0.5;
    return copy;
  }();
  return other;
}

void learn(Run& run, Skill skill, double ability, std::uint64_t seed, Way way) {
  optics::Stream luck(seed);
  std::vector<learner::Answer> answers;
  const Store& from = way == Way::ForMeasuring ? even_odds() : store();
  for (int i = 1; i <= 40; ++i) {
    const auto now = morning_s + 20 * i;
    const std::uint64_t own = optics::hash(seed) + static_cast<std::uint64_t>(i);
    const Unknown unknown = way == Way::AtRandom ? random_unknown(from, skill, own)
                                                 : next_unknown(from, answers, {skill}, now, own);
    const double difficulty = expected_difficulty(store(), unknown);
    const bool right = luck.next() < statistics::chance_right(ability, difficulty);
    run.right += right ? 1 : 0;
    ++run.asked;
    answers.push_back(answered(unknown, difficulty, right, now));
    if (i == 10 || i == 20 || i == 40) {
      run.error[i].add(ability_of(answers, skill, 950).mean - ability);
    }
  }
}

double share(const Run& run) {
  return static_cast<double>(run.right) / run.asked;
}

} // namespace

TEST_CASE("The choice brings the estimate home: error against unknowns at random") {
  for (const Skill skill : {Skill::Turbidity, Skill::Corrections}) {
    std::map<Way, Run> runs;
    optics::Stream people(5);
    for (std::uint64_t person = 1; person <= 200; ++person) {
      const double ability = normal(people);
      for (const Way way : {Way::AtRandom, Way::ForPractice, Way::ForMeasuring}) {
        learn(runs[way], skill, ability, person + 1000 * static_cast<std::uint64_t>(way), way);
      }
    }
    Run& random = runs[Way::AtRandom];
    Run& practice = runs[Way::ForPractice];
    Run& measuring = runs[Way::ForMeasuring];
    for (const int after : {10, 20, 40}) {
      INFO(fmt::format("{} after {}: at random {:.3f}, for practice {:.3f}, for measuring {:.3f}",
                       to_word(skill), after, random.error[after].rmse(), practice.error[after].rmse(),
                       measuring.error[after].rmse()));
    }
    INFO(fmt::format("{}, share right: at random {:.2f}, for practice {:.2f}, for measuring {:.2f}",
                     to_word(skill), share(random), share(practice), share(measuring)));
    for (const Way way : {Way::AtRandom, Way::ForPractice, Way::ForMeasuring}) {
      CHECK(runs[way].error[40].rmse() < 0.5);
      CHECK(runs[way].error[40].rmse() < runs[way].error[10].rmse());
    }
    // What is easy enough to practise on tells less than what is missed half the time.
    CHECK(practice.error[40].rmse() < 1.25 * random.error[40].rmse());
    CHECK(measuring.error[40].rmse() < 1.1 * random.error[40].rmse());
    CHECK(share(practice) == Approx(0.75).margin(0.07));
    CHECK(share(practice) > share(measuring) + 0.05);
  }
}

TEST_CASE("A better learner is given harder unknowns, and about three in four are right") {
  for (const Skill skill : {Skill::Copper, Skill::Meniscus, Skill::Corrections, Skill::Reception}) {
    double before = -10;
    for (const double ability : {-1.5, 0.0, 1.0}) {
      // So many answers at the ability itself that the estimate stands there.
      std::vector<learner::Answer> answers;
      for (int i = 0; i < 400; ++i) {
        answers.push_back(answered({skill, "none", "plain", 0, 1}, ability, i % 2 == 0, morning_s));
        answers.back().unknown = "";
        answers.back().test = "";
        answers.back().intensity.reset();
      }
      double sum = 0;
      constexpr int many = 60;
      for (int i = 0; i < many; ++i) {
        sum += expected_difficulty(
            store(), next_unknown(store(), answers, {skill}, morning_s + 60, static_cast<std::uint64_t>(i)));
      }
      INFO(to_word(skill) << " at " << ability << ": " << sum / many);
      CHECK(sum / many > before + 0.2);
      before = sum / many;
    }
  }
}

TEST_CASE("No skill and no unknown comes twice running, and every skill has its turn") {
  std::vector<learner::Answer> answers;
  std::map<std::string, int> met;
  for (int i = 0; i < 120; ++i) {
    const auto unknown =
        next_unknown(store(), answers, everything, morning_s + 20 * i, static_cast<std::uint64_t>(i % 3));
    if (!answers.empty()) {
      CHECK(to_word(unknown.skill) != answers.back().skill);
    }
    const auto latest = answers.size() < 12 ? answers.begin() : answers.end() - 12;
    for (auto before = latest; before != answers.end(); ++before) {
      CHECK(before->unknown != to_text(unknown));
    }
    ++met[to_word(unknown.skill)];
    answers.push_back(answered(unknown, 0, i % 4 != 0, morning_s + 20 * i));
  }
  for (const Skill skill : all_skills) {
    INFO(to_word(skill));
    CHECK(met[to_word(skill)] >= 10);
  }
}

TEST_CASE("Within a skill tests alternate and a grade does not come twice running") {
  std::vector<learner::Answer> answers;
  for (int i = 0; i < 40; ++i) {
    const auto unknown =
        next_unknown(store(), answers, {Skill::Turbidity}, morning_s + 20 * i, static_cast<std::uint64_t>(i));
    if (!answers.empty()) {
      CHECK(unknown.what != answers.back().test);
    }
    if (answers.size() >= 2) {
      CHECK(std::lround(unknown.target) != std::lround(*answers[answers.size() - 2].intensity));
    }
    answers.push_back(answered(unknown, 0, true, morning_s + 20 * i));
  }
}

TEST_CASE("A rule that fades comes back") {
  std::vector<learner::Answer> answers;
  // Everything at the counter was met; one fault was missed.
  for (const auto& [fault, difficulty] : store().rules.difficulty.delivery) {
    answers.push_back(
        answered({Skill::Reception, fault, "plain", 0, 1}, difficulty, fault != "number", morning_s));
  }
  for (const auto& one : learner::rules_kept(answers, store().learning, morning_s)) {
    CAPTURE(one.rule);
    CHECK(one.half_life_days == Approx(one.rule == "number" ? 0.5 : 2));
  }
  // Days later it is asked for more often than any other.
  std::map<std::string, int> asked;
  for (std::uint64_t seed = 1; seed <= 200; ++seed) {
    auto later = answers;
    // Something else was met since, so that nothing stands back for having been met lately.
    for (int i = 0; i < 8; ++i) {
      later.push_back(answered({Skill::Reception, "x", "plain", 0, static_cast<std::uint64_t>(i)}, 0,
                               i % 2 == 0, morning_s + 1));
    }
    ++asked[next_unknown(store(), later, {Skill::Reception}, morning_s + 86400, seed).what];
  }
  for (const auto& [fault, times] : asked) {
    INFO(fault << " " << times);
    CHECK((fault == "number" || times < asked["number"]));
  }
}

TEST_CASE("A tube's difficulty rises towards the line and falls upon it") {
  const auto& rule = store().standards->rules.find_test("benedict")->ordinal;
  const auto at = [&](double intensity) {
    return difficulty_at(distance_to_line(intensity, rule, 950), store().rules.difficulty);
  };
  CHECK(at(2.0) == Approx(std::log(0.08 / 0.5)));
  CHECK(at(2.25) == Approx(std::log(0.08 / 0.25)));
  CHECK(at(1.75) == Approx(at(2.25)));
  CHECK(at(2.4) > at(2.3));
  CHECK(at(2.5) == Approx(std::log(0.08 / 1.0))); // Both words are right: only the next lines matter.
  CHECK(distance_for(at(2.25), store().rules.difficulty) == Approx(0.25));
  CHECK(distance_to_half(1.018, 0.001, 0.0006) == Approx(0.5).margin(1e-6));
  CHECK(distance_to_half(1.0183, 0.001, 0.0006) == Approx(0.2).margin(1e-6));
  CHECK(distance_to_half(1.01852, 0.001, 0.0006) > 0.9);
}
