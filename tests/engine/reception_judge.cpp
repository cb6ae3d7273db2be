// What the counter's rules make of a delivery spoiled in one place.
#include "reception_support.hpp"

#include "engine/assets/world.hpp"
#include "engine/reception/instructions.hpp"
#include "engine/reception/judge.hpp"

#include <algorithm>
#include <functional>
#include <set>

using namespace matula;
using reception::Delivery;
using reception::Verdict;

namespace {

struct Spoiled {
  const char* words;
  std::function<void(Delivery&)> how;
  const char* fault;
  Verdict verdict;
};

const std::vector<Spoiled>& one_place() {
  static const std::vector<Spoiled> all{
      {"no label", [](Delivery& d) { d.label = "none"; }, "unlabelled", Verdict::Refuse},
      {"on the lid", [](Delivery& d) { d.label = "lid"; }, "label_on_lid", Verdict::Refuse},
      {"other name", [](Delivery& d) { d.label_name = "M"; }, "name", Verdict::Refuse},
      {"no name", [](Delivery& d) { d.label_name.reset(); }, "name", Verdict::Refuse},
      {"other number", [](Delivery& d) { d.label_number = "2"; }, "number", Verdict::Refuse},
      {"no time", [](Delivery& d) { d.passed_min.reset(); }, "no_time", Verdict::Refuse},
      {"leaking", [](Delivery& d) { d.leaking = true; }, "leaking", Verdict::Refuse},
      {"stool", [](Delivery& d) { d.contamination = "faeces"; }, "contaminated", Verdict::Refuse},
      {"paper", [](Delivery& d) { d.contamination = "paper"; }, "contaminated", Verdict::Qualify},
      {"jam jar", [](Delivery& d) { d.container = "household_jar"; }, "wrong_container", Verdict::Refuse},
      {"formalin", [](Delivery& d) { d.label_preservative = "formalin"; }, "wrong_preservative",
       Verdict::Qualify},
      {"30 mL", [](Delivery& d) { d.volume_ml = 30; }, "too_little", Verdict::Qualify},
      {"4 mL", [](Delivery& d) { d.volume_ml = 4; }, "too_little", Verdict::Refuse}};
  return all;
}

Verdict verdict_of(const Delivery& delivery) {
  return judge(delivery, test::book()).verdict;
}

} // namespace

TEST_CASE("A delivery in order is accepted, one spoiled in one place is not, and the fault is named") {
  CHECK(verdict_of(test::good_delivery()) == Verdict::Accept);
  for (const Spoiled& spoiled : one_place()) {
    INFO(spoiled.words);
    Delivery delivery = test::good_delivery();
    spoiled.how(delivery);
    const auto judgement = judge(delivery, test::book());
    CHECK(judgement.verdict == spoiled.verdict);
    CHECK(judgement.has(spoiled.fault));
    const bool one_fault = std::all_of(judgement.broken.begin(), judgement.broken.end(),
                                       [&](const auto& one) { return one.rule->fault == spoiled.fault; });
    CHECK(one_fault);
  }
}

TEST_CASE("What cannot be had again is never refused") {
  for (const Spoiled& spoiled : one_place()) {
    INFO(spoiled.words);
    Delivery delivery = test::good_delivery();
    delivery.replaceable = false;
    spoiled.how(delivery);
    CHECK(verdict_of(delivery) == Verdict::Qualify);
  }
}

TEST_CASE("Two hours in the warm are the limit for deposit and sugar") {
  // WHO 2003, p. 93: chemistry and deposit within 2 h.
  Delivery delivery = test::good_delivery();
  delivery.received_min = *delivery.passed_min + 120;
  CHECK(verdict_of(delivery) == Verdict::Accept);
  delivery.received_min += 1;
  CHECK(verdict_of(delivery) == Verdict::Refuse);
  SECTION("not in the refrigerator, up to a day (2 to 8 C, 24 h: common practice)") {
    delivery.storage = "refrigerated";
    CHECK(verdict_of(delivery) == Verdict::Accept);
    delivery.received_min = *delivery.passed_min + 24 * 60;
    CHECK(verdict_of(delivery) == Verdict::Accept);
    delivery.received_min += 1;
    CHECK(verdict_of(delivery) == Verdict::Refuse);
  }
  SECTION("nor for protein alone") {
    delivery.requests = {"protein"};
    CHECK(verdict_of(delivery) == Verdict::Accept);
  }
}

TEST_CASE("A preservative is a fault only for what it spoils") {
  Delivery delivery = test::good_delivery();
  const auto with = [&](const char* preservative, std::vector<std::string> requests) {
    delivery.label_preservative = preservative;
    delivery.requests = std::move(requests);
    return verdict_of(delivery);
  };
  // WHO 2003, p. 93: formalin keeps the deposit. It reduces copper: common practice.
  CHECK(with("formalin", {"sediment"}) == Verdict::Accept);
  CHECK(with("formalin", {"sugar"}) == Verdict::Refuse);
  // Laboratory Medicine 18 (1987) 382: acid for calcium, unacceptable for routine; thymol clouds acid tests.
  CHECK(with("acid", {"sediment"}) == Verdict::Refuse);
  CHECK(with("thymol", {"protein"}) == Verdict::Qualify);
  CHECK(with("thymol", {"sediment", "sugar"}) == Verdict::Accept);
  CHECK(with("fluoride", {"sugar"}) == Verdict::Accept);
  CHECK(with("fluoride", {"specific_gravity"}) == Verdict::Refuse);
}

TEST_CASE("Culture wants a sterile container, a clean catch and an hour") {
  Delivery delivery = test::good_delivery();
  delivery.requests = {"culture"};
  CHECK(judge(delivery, test::book()).has("wrong_container"));
  delivery.container = "sterile_cup";
  CHECK(verdict_of(delivery) == Verdict::Accept);
  delivery.received_min = *delivery.passed_min + 61; // WHO 2003, p. 93: culture 1 h.
  CHECK(verdict_of(delivery) == Verdict::Refuse);
  delivery.received_min = *delivery.passed_min;
  delivery.kind = "random";
  CHECK(judge(delivery, test::book()).has("wrong_kind"));
}

TEST_CASE("A day's collection: start, end, length, first and lost void, cold") {
  Delivery delivery = test::good_delivery();
  delivery.kind = "day";
  delivery.container = "day_bottle";
  delivery.storage = "refrigerated";
  delivery.requests = {"protein_24h"};
  delivery.day = test::good_day(1, 1);
  delivery.start_min = delivery.day->start_min;
  delivery.stop_min = delivery.day->stop_min;
  delivery.received_min = *delivery.stop_min + 60;
  CHECK(verdict_of(delivery) == Verdict::Accept);
  const auto only_fault = [&](const char* fault) {
    const auto judgement = judge(delivery, test::book());
    return judgement.broken.size() == 1 && judgement.has(fault);
  };
  SECTION("start not written") {
    delivery.start_min.reset();
    CHECK(only_fault("no_start_stop"));
  }
  SECTION("20 hours") {
    delivery.stop_min = *delivery.start_min + 20 * 60;
    CHECK(only_fault("not_24_hours"));
  }
  SECTION("the first void kept") {
    delivery.day->voids.front().kept = true;
    CHECK(only_fault("first_void"));
  }
  SECTION("a void lost") {
    delivery.day->voids[2].kept = false;
    CHECK(only_fault("lost_void"));
  }
  SECTION("a void after the end") {
    delivery.day->voids.back().at_min += 1;
    CHECK(only_fault("late_void"));
  }
  SECTION("in the warm without preservative (WHO 2003, p. 238)") {
    delivery.storage = "room";
    CHECK(only_fault("not_cold"));
    CHECK(verdict_of(delivery) == Verdict::Qualify);
  }
}

TEST_CASE("Every fault can be found by some rule, and every kind of specimen has its sheet") {
  std::set<std::string> found;
  for (const auto& rule : test::book().rules) {
    found.insert(rule.fault);
  }
  for (const auto& fault : test::book().faults) {
    INFO(fault.key);
    CHECK(found.count(fault.key) == 1);
  }
  const auto sheets = reception::load_instructions(assets::folder());
  if (!sheets) {
    FAIL(scenario::to_text(sheets.error()));
  }
  std::set<std::string> told;
  for (const auto& sheet : *sheets) {
    told.insert(sheet.kinds.begin(), sheet.kinds.end());
  }
  for (const auto& kind : test::book().keys("kind")) {
    INFO(kind);
    CHECK(told.count(kind) == 1);
  }
}
