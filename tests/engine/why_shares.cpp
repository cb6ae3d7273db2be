// Shares of a difference among what caused it: Shapley 1953 has four properties, and each is checked here.
#include "engine/attribution/gravity_steps.hpp"
#include "engine/attribution/shares.hpp"
#include "engine/attribution/words.hpp"

#include <catch2/catch.hpp>

#include <numeric>

using namespace matula::attribution;

namespace {

bool in(PutRight set, unsigned i) {
  return (set >> i & 1U) != 0;
}

Shares share(std::size_t count, Outcome outcome, double visible = 0.25, std::size_t exact_up_to = 5) {
  Outcomes outcomes(std::move(outcome));
  return share_out(count, {visible, exact_up_to, 16, 1}, outcomes);
}

double sum(const Shares& shares) {
  return std::accumulate(shares.amounts.begin(), shares.amounts.end(), 0.0);
}

} // namespace

TEST_CASE("Shares sum to the whole difference, also when the faults work on each other") {
  const auto both = [](PutRight s) {
    return (in(s, 0) ? 1.0 : 0) + (in(s, 1) && in(s, 2) ? 2.0 : 0) - (in(s, 0) && in(s, 2) ? 0.5 : 0);
  };
  const auto shares = share(3, both);
  CHECK(shares.exact);
  CHECK(sum(shares) == Approx(both(7) - both(0)).margin(1e-12));
  // By hand over the six orders: the first is worth 1 - 0.5/2, the second half of 2, the third the rest.
  CHECK(shares.amounts[0] == Approx(0.75));
  CHECK(shares.amounts[1] == Approx(1.0));
  CHECK(shares.amounts[2] == Approx(0.75));
}

TEST_CASE("Faults that do the same share equally") {
  // Either of two is enough to spoil the tube: only both put right help.
  const auto either = [](PutRight s) { return in(s, 0) && in(s, 1) ? 2.0 : 0.0; };
  const auto shares = share(2, either);
  CHECK(shares.amounts[0] == Approx(1.0));
  CHECK(shares.amounts[1] == Approx(1.0));
  // Either put right is enough.
  const auto enough = [](PutRight s) { return in(s, 0) || in(s, 1) ? 2.0 : 0.0; };
  CHECK(share(2, enough).amounts[0] == Approx(1.0));
}

TEST_CASE("What changes nothing visible, alone or last, gets nothing and stays as it was") {
  const auto with_a_trifle = [](PutRight s) { return (in(s, 0) ? 2.0 : 0) + (in(s, 1) ? 0.2 : 0); };
  const auto shares = share(2, with_a_trifle);
  CHECK_FALSE(shares.matters[1]);
  CHECK(shares.amounts[1] == 0);
  CHECK(shares.amounts[0] == Approx(2.0));
  CHECK(shares.right == Approx(2.0)); // Not 2.2: the trifle is not put right.
}

TEST_CASE("The order in which faults are named does not matter") {
  const auto one = [](PutRight s) {
    return (in(s, 0) ? 1.0 : 0) + (in(s, 1) && in(s, 2) ? 1.5 : 0) + (in(s, 2) ? 0.5 : 0);
  };
  const auto turned = [&](PutRight s) {
    return one((in(s, 2) ? 1U : 0U) | (in(s, 1) ? 2U : 0U) | (in(s, 0) ? 4U : 0U));
  };
  const auto a = share(3, one);
  const auto b = share(3, turned);
  CHECK(a.amounts[0] == Approx(b.amounts[2]));
  CHECK(a.amounts[1] == Approx(b.amounts[1]));
  CHECK(a.amounts[2] == Approx(b.amounts[0]));
}

TEST_CASE("The glove game: the one that has the left glove gets two thirds") {
  // One left glove and two right ones; a pair is worth 1. Shapley's value is 2/3, 1/6, 1/6: a standard
  // example of textbooks on cooperative games, worked out over its six orders.
  const auto pair = [](PutRight s) { return in(s, 0) && (in(s, 1) || in(s, 2)) ? 1.0 : 0.0; };
  const auto shares = share(3, pair, 0.0);
  CHECK(shares.amounts[0] == Approx(2.0 / 3));
  CHECK(shares.amounts[1] == Approx(1.0 / 6));
  CHECK(shares.amounts[2] == Approx(1.0 / 6));
}

TEST_CASE("Many faults are shared out by lot: bounded, the same each time, and the sum stays exact") {
  const auto many = [](PutRight s) {
    double sum = 0;
    for (unsigned i = 0; i < 10; ++i) {
      sum += in(s, i) ? 0.5 + 0.1 * i : 0;
      sum += i > 0 && in(s, i) && in(s, i - 1) ? 0.3 : 0;
    }
    return sum;
  };
  Outcomes outcomes(many);
  const auto shares = share_out(10, {0.25, 5, 16, 9}, outcomes);
  CHECK_FALSE(shares.exact);
  CHECK(outcomes.known() <= 2 + 20 + 32 * 10);
  CHECK(sum(shares) == Approx(many(1023) - many(0)).margin(1e-9));
  const auto exact = share(10, many, 0.25, 10);
  CHECK(share(10, many).amounts == share(10, many).amounts);
  for (std::size_t i = 0; i < 10; ++i) {
    CHECK(shares.amounts[i] == Approx(exact.amounts[i]).margin(0.15));
  }
}

TEST_CASE("Nothing to explain, nothing shared") {
  CHECK(share(0, [](PutRight) { return 3.0; }).amounts.empty());
}

TEST_CASE("Parts in words add up to the whole") {
  Explanation e;
  e.own_tube = "your heat test tube";
  e.found = 1.0;
  e.put_right = 3.0;
  e.by_the_book = 3.1;
  e.found_word = "1+";
  e.book_word = "3+";
  e.visible = 0.25;
  e.shares = {{"heat.1", "40 s in the flame instead of 2 min", 1.3, "heat.boiled"},
              {"missing.reagent", "no acetic acid was added", 0.7, "heat.acid_added"}};
  const auto words = say(e);
  CHECK(words.find("2 min: one and a half of the two grades.") != std::string::npos);
  CHECK(words.find("added: half of the two grades.") != std::string::npos);
  CHECK(words.find("The rest was right.") != std::string::npos);
  e.by_the_book = 4.0;
  CHECK(say(e).find("The rest was right.") == std::string::npos);
  CHECK(say(e).find("What is left (one grade)") != std::string::npos);
  e.by_the_book = 3.0;
  e.harmless = {"7 mL of urine instead of 9 mL"};
  CHECK(say(e).find("The rest was right.") == std::string::npos);
}

TEST_CASE("A calculation is taken apart into what each wrong line added") {
  using matula::scoring::Step;
  std::vector<Step> steps(3);
  steps[0] = {"zero", -0.002, {{-0.002, -0.002}}, {{0.002, "the sign was turned round"}}, 1.022};
  steps[1] = {"temperature", 0.001, {{0.001, 0.001}}, {}, 1.023};
  steps[2] = {"protein", -0.003, {{-0.003, -0.003}}, {}, std::nullopt};
  const auto errors = line_errors(1.020, steps);
  REQUIRE(errors.lines.size() == 3);
  CHECK(errors.any_line);
  CHECK(errors.lines[0].wrong);
  CHECK(errors.lines[0].error == Approx(0.004).margin(1e-12));
  CHECK_FALSE(errors.lines[1].wrong);
  CHECK(errors.lines[2].wrong);
  CHECK(errors.lines[2].error == Approx(0.003).margin(1e-12));
  // reading + expected + errors is what was written.
  CHECK(1.020 + errors.expected + errors.accepted + 0.004 + 0.003 == Approx(1.023).margin(1e-12));
}
