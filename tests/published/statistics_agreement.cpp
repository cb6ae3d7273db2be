// Agreement of readers and the worth of items, against printed values and independent programs.
#include "engine/statistics/agreement.hpp"
#include "engine/statistics/items.hpp"
#include "engine/statistics/raters.hpp"
#include "engine/statistics/resample.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <random>

using namespace matula::statistics;

namespace {

PairTable table_of(std::size_t categories, const std::vector<double>& counts) {
  PairTable table(categories);
  table.counts() = counts;
  return table;
}

void check_kappa(const PairTable& table, const std::vector<double>& weights, double value, double se) {
  const auto kappa = cohen_kappa(table, weights);
  REQUIRE(kappa);
  CHECK(kappa->value == Approx(value).margin(1e-9));
  CHECK(kappa->se == Approx(se).margin(1e-9));
}

/// Krippendorff's example: four readers, twelve things, gaps.
Ballots krippendorff_example() {
  const std::vector<std::vector<int>> by_reader{{1, 2, 3, 3, 2, 1, 4, 1, 2, 0, 0, 0},
                                                {1, 2, 3, 3, 2, 2, 4, 1, 2, 5, 0, 0},
                                                {0, 3, 3, 3, 2, 3, 4, 2, 2, 5, 1, 3},
                                                {1, 2, 3, 3, 2, 4, 4, 1, 2, 5, 1, 0}};
  std::vector<std::vector<int>> by_thing(12);
  for (const auto& readings : by_reader) {
    for (std::size_t thing = 0; thing < by_thing.size(); ++thing) {
      by_thing[thing].push_back(readings[thing] - 1); // 0 stands for a gap
    }
  }
  return count_votes(by_thing, 5);
}

} // namespace

TEST_CASE("Cohen's kappa") {
  // J. Cohen 1968, Table 1, as counts of 200. Printed: .492 and, weighted, .348; the figures with more digits
  // by vcd::Kappa (R) and statsmodels, which agree.
  const PairTable cohen = table_of(3, {88, 14, 18, 10, 40, 10, 2, 6, 12});
  check_kappa(cohen, agreement_weights(Weighting::Nominal, 3), 0.4915254237, 0.0510018156);
  CHECK(cohen_kappa(cohen, agreement_weights(Weighting::Nominal, 3))->se_if_chance ==
        Approx(0.0519789364).margin(1e-9));
  check_kappa(cohen, weights_from_disagreement({0, 1, 3, 1, 0, 6, 3, 6, 0}), 0.3478260870, 0.0755040153);
  check_kappa(cohen, agreement_weights(Weighting::Linear, 3), 0.4736842105, 0.0544323092);
  check_kappa(cohen, agreement_weights(Weighting::Quadratic, 3), 0.4545454545, 0.0664536816);
  // A widely used R package prints .0643 and .3518 for two of these errors; 20,000 draws gave .0662 and
  // .0757.
  CHECK(std::abs(cohen_kappa(cohen, agreement_weights(Weighting::Quadratic, 3))->se - .0643) > 0.002);
  // A printout in the manual of a commercial statistics package, by way of the tests of statsmodels: .4842
  // (.1380), linear .4701 (.1457).
  const PairTable printed = table_of(3, {0, 4, 1, 0, 8, 0, 0, 1, 5});
  check_kappa(printed, agreement_weights(Weighting::Nominal, 3), 0.4841628959, 0.1380135783);
  const auto linear = cohen_kappa(printed, agreement_weights(Weighting::Linear, 3));
  CHECK(linear->value == Approx(0.4701195).margin(5e-8));
  CHECK(linear->se == Approx(0.1457460).margin(5e-8));
  // The printed 95 % intervals: .2137 to .7547 and .1845 to .7558.
  constexpr double both_sides = 1.959963984540054;
  const auto simple = cohen_kappa(printed, agreement_weights(Weighting::Nominal, 3));
  CHECK(simple->value - both_sides * simple->se == Approx(.2137).margin(5e-5));
  CHECK(simple->value + both_sides * simple->se == Approx(.7547).margin(5e-5));
  CHECK(linear->value - both_sides * linear->se == Approx(.1845).margin(5e-5));
  CHECK(linear->value + both_sides * linear->se == Approx(.7558).margin(5e-5));
  // R. Artstein and M. Poesio 2008: .348.
  CHECK(cohen_kappa(table_of(2, {20, 20, 10, 50}), agreement_weights(Weighting::Nominal, 2))->value ==
        Approx(0.348).margin(0.0005));
  // A. Agresti's marital ratings, by vcd.
  const PairTable marital = table_of(4, {7, 7, 2, 3, 2, 8, 3, 7, 1, 5, 4, 9, 2, 8, 9, 14});
  check_kappa(marital, agreement_weights(Weighting::Nominal, 4), 0.1293302540, 0.0685985325);
  check_kappa(marital, agreement_weights(Weighting::Linear, 4), 0.2373806276, 0.0783163348);
  check_kappa(marital, agreement_weights(Weighting::Quadratic, 4), 0.3320455863, 0.0972975220);
}

TEST_CASE("Rows are truth: asymmetric weights turned over give another figure") {
  // J. Cohen 1968 has an example of weights that differ with the direction; it comes out as printed only
  // turned over (.353 against .421). Here any such weights must tell rows from columns.
  const PairTable table = table_of(3, {88, 14, 18, 10, 40, 10, 2, 6, 12});
  const PairTable turned = table_of(3, {88, 10, 2, 14, 40, 6, 18, 10, 12});
  const std::vector<double> harsh_below = weights_from_disagreement({0, 1, 2, 4, 0, 1, 6, 4, 0});
  const std::vector<double> harsh_above = weights_from_disagreement({0, 4, 6, 1, 0, 4, 2, 1, 0});
  CHECK(*kappa_value(table, harsh_below) == Approx(*kappa_value(turned, harsh_above)));
  CHECK(std::abs(*kappa_value(table, harsh_below) - *kappa_value(table, harsh_above)) > 0.01);
  const auto plain =
      plain_agreement(table_of(2, {6, 4, 0, 0})); // Nothing there, four times read as something.
  CHECK(plain->bias == Approx(0.4));
}

TEST_CASE("A grade nobody used keeps its place and its weight") {
  // The same readings on a scale of three and on one of four: the weights differ, and so does kappa.
  const PairTable three = table_of(3, {8, 2, 0, 1, 6, 2, 0, 1, 5});
  const PairTable four = table_of(4, {8, 2, 0, 0, 1, 6, 2, 0, 0, 1, 5, 0, 0, 0, 0, 0});
  const auto on_three = kappa_value(three, agreement_weights(Weighting::Linear, 3));
  const auto on_four = kappa_value(four, agreement_weights(Weighting::Linear, 4));
  // A constant factor in all disagreements cancels; the quadratic and the linear weights are such factors.
  CHECK(*on_three == Approx(*on_four));
  const auto ordinal_gap =
      krippendorff_alpha(Ballots{4, {{2, 0, 0, 0}, {1, 0, 1, 0}, {0, 0, 0, 2}}}, Metric::Ordinal, {});
  const auto ordinal_close =
      krippendorff_alpha(Ballots{3, {{2, 0, 0}, {1, 1, 0}, {0, 0, 2}}}, Metric::Ordinal, {});
  CHECK(*ordinal_gap == Approx(*ordinal_close)); // His metric counts readings, not empty grades.
  // Gwet's chance term knows the number of grades.
  const Ballots on_two{2, {{2, 0}, {1, 1}, {2, 0}}};
  const Ballots on_six{6, {{2, 0, 0, 0, 0, 0}, {1, 1, 0, 0, 0, 0}, {2, 0, 0, 0, 0, 0}}};
  CHECK(gwet_ac(on_two, agreement_weights(Weighting::Nominal, 2))->value <
        gwet_ac(on_six, agreement_weights(Weighting::Nominal, 6))->value);
}

TEST_CASE("No agreement can be told where there is nothing, or only one grade") {
  CHECK_FALSE(cohen_kappa(PairTable(6), agreement_weights(Weighting::Linear, 6)));
  CHECK_FALSE(cohen_kappa(table_of(2, {7, 0, 0, 0}), agreement_weights(Weighting::Nominal, 2)));
  PairTable table(6);
  CHECK_THROWS_AS(table.add(6, 0), std::out_of_range);
}

TEST_CASE("Kappa falls where nearly all is negative, Gwet's coefficient does not") {
  // 94 % raw agreement: kappa .3684, AC1 .9337 (irrCAC).
  const PairTable rare = table_of(2, {92, 3, 3, 2});
  CHECK(cohen_kappa(rare, agreement_weights(Weighting::Nominal, 2))->value == Approx(0.3684).margin(0.0001));
  Ballots ballots{2, {}};
  for (int i = 0; i < 100; ++i) {
    ballots.votes.push_back(i < 92   ? std::vector<double>{2, 0}
                            : i < 98 ? std::vector<double>{1, 1}
                                     : std::vector<double>{0, 2});
  }
  CHECK(gwet_ac(ballots, agreement_weights(Weighting::Nominal, 2))->value == Approx(0.9337).margin(0.0001));
}

TEST_CASE("Several readers") {
  // The worked example of a public encyclopedia: 14 readers, 10 things, 5 categories; kappa .210.
  const Ballots fourteen{5,
                         {{0, 0, 0, 0, 14},
                          {0, 2, 6, 4, 2},
                          {0, 0, 3, 5, 6},
                          {0, 3, 9, 2, 0},
                          {2, 2, 8, 1, 1},
                          {7, 7, 0, 0, 0},
                          {3, 2, 6, 3, 0},
                          {2, 5, 3, 2, 2},
                          {6, 5, 2, 1, 0},
                          {0, 2, 2, 3, 7}}};
  CHECK(*fleiss_kappa(fourteen) == Approx(0.210).margin(0.0005));
  CHECK_THROWS_AS(fleiss_kappa(krippendorff_example()), std::invalid_argument);
  // Krippendorff's own example; printed .743, .815, .849, .797, more digits by irr::kripp.alpha.
  const Ballots gaps = krippendorff_example();
  const std::vector<double> values{1, 2, 3, 4, 5};
  CHECK(*krippendorff_alpha(gaps, Metric::Nominal, values) == Approx(0.743421052632).margin(1e-11));
  CHECK(*krippendorff_alpha(gaps, Metric::Ordinal, values) == Approx(0.815387503755).margin(1e-11));
  CHECK(*krippendorff_alpha(gaps, Metric::Interval, values) == Approx(0.849107142857).margin(1e-11));
  CHECK(*krippendorff_alpha(gaps, Metric::Ratio, values) == Approx(0.797402774712).margin(1e-11));
  // A thing with one reading has no pair and changes nothing.
  Ballots without_last = gaps;
  without_last.votes.pop_back();
  CHECK(*krippendorff_alpha(without_last, Metric::Nominal, values) == Approx(0.743421052632).margin(1e-11));
  // The same data by irrCAC (K.L. Gwet).
  const auto ac1 = gwet_ac(gaps, agreement_weights(Weighting::Nominal, 5));
  CHECK(ac1->value == Approx(0.77544).margin(0.000005));
  CHECK(ac1->agreement == Approx(0.818182).margin(0.0000005));
  CHECK(ac1->se == Approx(0.14295).margin(0.000005));
  CHECK(gwet_ac(gaps, agreement_weights(Weighting::Linear, 5))->value == Approx(0.85874).margin(0.000005));
  CHECK(gwet_ac(gaps, agreement_weights(Weighting::Quadratic, 5))->value == Approx(0.91400).margin(0.000005));
}

TEST_CASE("Thirty patients named by six psychiatrists") {
  // J.L. Fleiss 1971: .430; more digits by irr::kappam.fleiss and statsmodels.
  const char* named[] = {"444444", "222555", "233335", "555555", "222444", "113333", "333355", "113334",
                         "114444", "555555", "144444", "124444", "222333", "144444", "224445", "333335",
                         "111455", "111112", "224444", "133555", "555555", "244444", "224555", "114444",
                         "144445", "222224", "111155", "224444", "133333", "555555"};
  std::vector<std::vector<int>> by_patient;
  for (const char* row : named) {
    by_patient.emplace_back();
    for (int i = 0; i < 6; ++i) {
      by_patient.back().push_back(row[i] - '1');
    }
  }
  const Ballots ballots = count_votes(by_patient, 5);
  CHECK(*fleiss_kappa(ballots) == Approx(0.43024452006).margin(1e-11));
  // Each category against all others: .245 .245 .520 .471 .566.
  const double single[] = {.245, .245, .520, .471, .566};
  for (std::size_t category = 0; category < 5; ++category) {
    Ballots against{2, {}};
    for (const auto& votes : ballots.votes) {
      against.votes.push_back({votes[category], 6 - votes[category]});
    }
    CHECK(*fleiss_kappa(against) == Approx(single[category]).margin(0.0005));
  }
}

TEST_CASE("Ordinal weights by rank are not Krippendorff's ordinal metric") {
  // Gwet's ordinal weights, 1 - C(|i-j|+1, 2) / C(q, 2), by irrCAC: AC2 .89894, alpha .83364; Krippendorff's
  // own ordinal alpha of the same readings is .815388. A report must name which it gives.
  std::vector<double> weights;
  std::vector<double> distances;
  for (int i = 0; i < 5; ++i) {
    for (int j = 0; j < 5; ++j) {
      const int apart = std::abs(i - j);
      distances.push_back(apart * (apart + 1) / 2 / 10.0);
      weights.push_back(1 - distances.back());
    }
  }
  const Ballots gaps = krippendorff_example();
  CHECK(gwet_ac(gaps, weights)->value == Approx(0.89894).margin(0.000005));
  CHECK(*krippendorff_alpha(gaps, distances) == Approx(0.83364).margin(0.000005));
  CHECK(*krippendorff_alpha(gaps, Metric::Ordinal, {}) == Approx(0.815388).margin(0.0000005));
}

TEST_CASE("Items of ten learners") {
  // K.L. Wuensch, KR20.txt (teaching page, East Carolina University): sum pq 2.18, variance of the sums 5.84.
  const char* rows[] = {"1111110110", "1011011101", "1111011001", "0010001000", "0000010010",
                        "1110111111", "1101110111", "1111111101", "0101111101", "1101101110"};
  ScoreTable table{10, 10, {}};
  for (const char* row : rows) {
    for (int i = 0; i < 10; ++i) {
      table.scores.push_back(row[i] == '1' ? 1 : 0);
    }
  }
  const auto figures = analyse_items(table);
  REQUIRE(figures);
  CHECK(figures->variance == Approx(5.84).margin(1e-12));
  CHECK(figures->alpha == Approx(0.6963470320).margin(1e-9));
  CHECK(figures->error == Approx(1.331666).margin(1e-6));
  double shares = 0; // Sum of p q, printed as 2.18.
  for (const ItemFigures& item : figures->items) {
    shares += item.mean * (1 - item.mean);
  }
  CHECK(shares == Approx(2.18).margin(1e-12));
  // The mixed formula of a teaching page, p q over n beside a variance over n - 1, gives .737823.
  CHECK(10.0 / 9 * (1 - shares / (figures->variance * 10 / 9)) != Approx(figures->alpha).margin(0.01));
  CHECK(10.0 / 9 * (1 - shares / (figures->variance * 10 / 9)) == Approx(0.737823).margin(1e-6));
  CHECK(kr21(10, figures->mean, figures->variance) == Approx(0.684170).margin(1e-6));
  const std::vector<double> with_rest{.705889, .705889,  0,       .473589,  .583874,
                                      .286147, -.027445, .705889, -.123613, .475867};
  for (std::size_t i = 0; i < with_rest.size(); ++i) {
    CAPTURE(i);
    CHECK(figures->items[i].with_rest == Approx(with_rest[i]).margin(1e-6));
  }
}

TEST_CASE("What a correlation may be at most") {
  // M. Hollander and D.A. Wolfe, Nonparametric Statistical Methods, 1973, 187: nine lots of tuna, their
  // lightness and what a panel thought of them; r and the 95 % interval as R prints them under cor.test.
  constexpr double both_sides = 1.959963984540054;
  CHECK(correlation_at_most(0.5711816, 9, both_sides) == Approx(0.8955795).margin(1e-7));
  CHECK(-correlation_at_most(-0.5711816, 9, both_sides) == Approx(-0.1497426).margin(1e-7));
  // z of r = 0.5 is 0.5493 in every printed table of the transformation (R.A. Fisher, Statistical Methods for
  // Research Workers); with 28 persons its error is a fifth.
  CHECK(std::atanh(correlation_at_most(0.5, 28, 1)) == Approx(0.5493 + 0.2).margin(0.00005));
  CHECK(correlation_at_most(0.5, 28, 0) == Approx(0.5));
  // Three persons tell nothing; those who agree perfectly need no room.
  CHECK(correlation_at_most(-0.9, 3, both_sides) == 1);
  CHECK(correlation_at_most(1, 100, both_sides) == Approx(1).margin(1e-5));
}

TEST_CASE("Items of a thousand") {
  // Five items of a law school test: R.D. Bock and M. Lieberman 1970; counts of the 32 answer patterns from
  // memory, they add up to 1000. Alpha printed as .295 by ltm (D. Rizopoulos 2006); digits by psych::alpha.
  const int counts[32] = {3,  6,  2,  11, 1, 1,  3,  4,  1,  8,  0,  16,  0,  3,  2,  15,
                          10, 29, 14, 81, 3, 28, 15, 80, 16, 56, 21, 173, 11, 61, 28, 298};
  ScoreTable table{0, 5, {}};
  for (unsigned pattern = 0; pattern < 32; ++pattern) {
    for (int times = 0; times < counts[pattern]; ++times) {
      ++table.persons;
      for (unsigned item = 0; item < 5; ++item) {
        table.scores.push_back((pattern >> (4 - item)) & 1U);
      }
    }
  }
  REQUIRE(table.persons == 1000);
  const auto figures = analyse_items(table);
  CHECK(figures->alpha == Approx(0.2949971922).margin(1e-9));
  const double with_rest[] = {.1128326889, .1531781201, .1727789433, .1444280952, .1215964025};
  const double without[] = {.2753562, .2375839, .2167995, .2459327, .2662944};
  for (std::size_t i = 0; i < 5; ++i) {
    CAPTURE(i);
    CHECK(figures->items[i].with_rest == Approx(with_rest[i]).margin(1e-9));
    CHECK(figures->items[i].alpha_without == Approx(without[i]).margin(1e-6));
  }
}

TEST_CASE("Students are drawn whole: their readings hang together") {
  // A class whose students differ in bias: the interval over students is wider than over single readings.
  std::mt19937_64 source(7);
  std::vector<PairTable> by_student;
  std::vector<PairTable> by_reading;
  for (int student = 0; student < 60; ++student) {
    const int bias = student % 3 - 1;
    PairTable table(6);
    for (int i = 0; i < 40; ++i) {
      const int truth = static_cast<int>(source() % 6);
      const int read = std::min(5, std::max(0, truth + bias));
      PairTable single(6);
      single.add(static_cast<std::size_t>(truth), static_cast<std::size_t>(read));
      by_reading.push_back(single);
      table += single;
    }
    by_student.push_back(table);
  }
  const auto weights = agreement_weights(Weighting::Quadratic, 6);
  const auto whole = kappa_interval(by_student, weights, 400, 11);
  const auto again = kappa_interval(by_student, weights, 400, 11);
  const auto single = kappa_interval(by_reading, weights, 400, 11);
  REQUIRE(whole);
  CHECK(whole->low == again->low);
  CHECK(whole->high - whole->low > 1.3 * (single->high - single->low));
}

TEST_CASE("Gwet's coefficient of a table of pairs is that of two readers of each thing, and its interval "
          "holds it") {
  // J. Cohen, Psychol. Bull. 70 (1968) 213, table 1.
  const std::vector<std::vector<double>> counts{{88, 14, 18}, {10, 40, 10}, {2, 6, 12}};
  PairTable table(3);
  Ballots ballots;
  ballots.categories = 3;
  for (std::size_t i = 0; i < 3; ++i) {
    for (std::size_t j = 0; j < 3; ++j) {
      table.add(i, j, counts[i][j]);
      for (int k = 0; k < static_cast<int>(counts[i][j]); ++k) {
        std::vector<double> votes(3);
        votes[i] += 1;
        votes[j] += 1;
        ballots.votes.push_back(votes);
      }
    }
  }
  for (const auto weighting : {Weighting::Nominal, Weighting::Linear, Weighting::Quadratic}) {
    const auto weights = agreement_weights(weighting, 3);
    const auto value = gwet_value(table, weights);
    REQUIRE(value);
    CHECK(*value == Approx(gwet_ac(ballots, weights)->value).epsilon(1e-12));
    const std::vector<PairTable> students(10, table); // All alike: every draw gives the same.
    const auto interval = gwet_interval(students, weights, 50, 3);
    REQUIRE(interval);
    CHECK(interval->low == Approx(*value).epsilon(1e-12));
    CHECK(interval->high == Approx(*value).epsilon(1e-12));
  }
  CHECK_FALSE(gwet_value(PairTable(3), agreement_weights(Weighting::Linear, 3)));
}
