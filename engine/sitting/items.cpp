#include "engine/sitting/items.hpp"

#include "engine/procedure/curve.hpp"
#include "engine/reception/items.hpp"
#include "engine/scenario/scenario.hpp"
#include "engine/strict/nearest.hpp"

#include <algorithm>

namespace matula::sitting {

namespace {

const std::string decision_mark = "decision.";

bool holds(const std::vector<std::string>& words, const std::string& word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

std::string refuse_result(const procedure::Procedure& test, const Record& record) {
  if (record.item != test.item() || test.words.empty() || holds(test.words, record.value)) {
    return "";
  }
  return "'" + record.value + "' is no word for this test; write " +
         strict::suggestion(record.value, test.words, test.words.size());
}

std::string refuse_decision(const scenario::Scenario& scenario, const Record& record) {
  const std::string key = record.item.substr(decision_mark.size());
  std::vector<std::string> keys;
  for (const auto& decision : scenario.decisions) {
    keys.push_back(decision.key);
    if (decision.key != key) {
      continue;
    }
    std::vector<std::string> options;
    for (const auto& option : decision.options) {
      options.push_back(option.first);
    }
    return holds(options, record.value) ? ""
                                        : "'" + record.value + "' is no answer to '" + key +
                                              "': " + strict::suggestion(record.value, options);
  }
  return "this case asks no decision '" + key + "'" +
         (keys.empty() ? std::string() : ": " + strict::suggestion(key, keys));
}

} // namespace

const std::vector<std::string>& worksheet_items() {
  static const std::vector<std::string> items = [] {
    std::vector<std::string> all{"colour",          "clarity",         "odour",        "sg.zero",
                                 "sg.temperature",  "sg.reading",      "sg.step.zero", "sg.step.temperature",
                                 "sg.step.protein", "sg.step.glucose", "sg.corrected"};
    for (const auto& one : procedure::shipped_list()) {
      const auto of_test = procedure::items_of(one);
      all.insert(all.end(), of_test.begin(), of_test.end());
    }
    return all;
  }();
  return items;
}

const std::vector<std::string>& aid_items() {
  static const std::vector<std::string> items{"aid.guide", "aid.text", "aid.still", "aid.hues"};
  return items;
}

std::string unknown_item(const std::string& item) {
  if (reception::owns(item)) {
    return reception::unknown_item(item);
  }
  if (item.rfind(decision_mark, 0) == 0 || holds(worksheet_items(), item) || holds(aid_items(), item)) {
    return "";
  }
  return "an item of the worksheet, " +
         strict::suggestion(item, worksheet_items(), worksheet_items().size()) + " (or decision.KEY)";
}

std::string refuse_record(const scenario::Scenario& scenario, const Record& record) {
  if (reception::owns(record.item)) {
    return reception::refuse(scenario.collection, record.item, record.value);
  }
  if (record.item.rfind(decision_mark, 0) == 0) {
    return record.value.empty() ? "" : refuse_decision(scenario, record);
  }
  if (const std::string wanted = unknown_item(record.item); !wanted.empty()) {
    return "the worksheet has no line '" + record.item + "'; write " + wanted;
  }
  const auto dot = record.item.find('.');
  const auto* test = procedure::find_shipped(record.item.substr(0, dot));
  return test == nullptr || record.value.empty() ? "" : refuse_result(*test, record);
}

} // namespace matula::sitting
