#include "engine/reception/facts.hpp"

#include "engine/reception/day.hpp"

#include <algorithm>

namespace matula::reception {

namespace {

// Numbers, then words.
const std::vector<std::string> numbers{"age_min", "volume_ml", "short_ml", "day_hours"};

const std::map<std::string, std::vector<std::string>>& own_words() {
  static const std::map<std::string, std::vector<std::string>> words{
      {"label", {"container", "lid", "none"}},
      {"name", {"same", "different", "missing"}},
      {"number", {"same", "different", "missing"}},
      {"time", {"written", "missing"}},
      {"start", {"written", "missing"}},
      {"stop", {"written", "missing"}},
      {"storage", {"room", "refrigerated"}},
      {"leaking", {"yes", "no"}},
      {"first_void", {"kept", "discarded"}},
      {"lost_void", {"yes", "no"}},
      {"late_void", {"yes", "no"}}};
  return words;
}

// Facts whose words are a list of the book.
const std::vector<std::string> listed{"kind", "container", "preservative", "contamination"};

std::string compare(const std::optional<std::string>& label, const std::string& form) {
  return !label ? "missing" : *label == form ? "same" : "different";
}

double needed_ml(const Delivery& delivery, const Book& book) {
  double sum = 0;
  for (const Word& word : book.words.at("request")) {
    const auto& asked = delivery.requests;
    sum += std::find(asked.begin(), asked.end(), word.key) == asked.end() ? 0 : word.needs_ml;
  }
  return sum;
}

const char* yes_no(bool yes) {
  return yes ? "yes" : "no";
}

void add_times(const Delivery& delivery, Facts& facts) {
  const auto written = [](const auto& time) { return time ? "written" : "missing"; };
  const bool timed = delivery.kind == "day";
  if (timed) {
    facts.words["start"] = written(delivery.start_min);
    facts.words["stop"] = written(delivery.stop_min);
  } else {
    facts.words["time"] = written(delivery.passed_min);
  }
  const auto& last = timed ? delivery.stop_min : delivery.passed_min;
  if (last) {
    facts.numbers["age_min"] = delivery.received_min - *last;
  }
  if (timed && delivery.start_min && delivery.stop_min) {
    facts.numbers["day_hours"] = (*delivery.stop_min - *delivery.start_min) / 60.0;
  }
}

void add_day(const DayRecord& day, Facts& facts) {
  bool first_kept = false;
  bool lost = false;
  bool late = false;
  for (const Void& one : day.voids) {
    const bool belongs = counts(day, one);
    first_kept = first_kept || (one.kept && one.at_min <= day.start_min);
    late = late || (one.kept && one.at_min > day.stop_min);
    lost = lost || (belongs && !one.kept);
  }
  facts.words["first_void"] = first_kept ? "kept" : "discarded";
  facts.words["lost_void"] = yes_no(lost);
  facts.words["late_void"] = yes_no(late);
}

} // namespace

const std::vector<std::string>& fact_names() {
  static const std::vector<std::string> names = [] {
    std::vector<std::string> all = numbers;
    all.insert(all.end(), listed.begin(), listed.end());
    for (const auto& [name, words] : own_words()) {
      all.push_back(name);
    }
    return all;
  }();
  return names;
}

bool is_number_fact(std::string_view name) {
  return std::find(numbers.begin(), numbers.end(), name) != numbers.end();
}

std::vector<std::string> words_of_fact(const std::string& name, const Book& book) {
  const auto own = own_words().find(name);
  return own != own_words().end() ? own->second : book.keys(name);
}

Facts facts_of(const Delivery& delivery, const Book& book) {
  Facts facts;
  facts.words = {{"kind", delivery.kind},
                 {"label", delivery.label},
                 {"container", delivery.container},
                 {"preservative", delivery.label_preservative},
                 {"storage", delivery.storage},
                 {"contamination", delivery.contamination},
                 {"leaking", yes_no(delivery.leaking)}};
  if (delivery.label != "none") {
    facts.words["name"] = compare(delivery.label_name, delivery.form_name);
    facts.words["number"] = compare(delivery.label_number, delivery.form_number);
  }
  facts.numbers["volume_ml"] = delivery.volume_ml;
  facts.numbers["short_ml"] = needed_ml(delivery, book) - delivery.volume_ml;
  add_times(delivery, facts);
  if (delivery.day) {
    add_day(*delivery.day, facts);
  }
  return facts;
}

} // namespace matula::reception
