#include "engine/reception/items.hpp"

#include "engine/reception/book.hpp"
#include "engine/reception/day.hpp"
#include "engine/reception/day_parts.hpp"
#include "engine/strict/nearest.hpp"

#include <algorithm>

namespace matula::reception {

namespace {

const std::string verdict_item = "reception";
const std::string fault_mark = "reception.fault.";
const std::string day_mark = "day.";
const std::string count_mark = "day.counts.";

bool begins(const std::string& text, const std::string& beginning) {
  return text.rfind(beginning, 0) == 0;
}

bool holds(const std::vector<std::string>& words, const std::string& word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

std::vector<std::string> fault_keys() {
  std::vector<std::string> keys;
  const auto& book = shipped_book();
  for (const Fault& fault : book ? book->faults : std::vector<Fault>{}) {
    keys.push_back(fault.key);
  }
  return keys;
}

std::vector<std::string> band_keys() {
  std::vector<std::string> keys;
  const auto& book = shipped_book();
  for (const Band& band : book ? book->day.bands : std::vector<Band>{}) {
    keys.push_back(band.key);
  }
  return keys;
}

bool is_whole_number(const std::string& text) {
  constexpr std::size_t most_digits = 3;
  return !text.empty() && text.size() <= most_digits && text.front() != '0' &&
         text.find_first_not_of("0123456789") == std::string::npos;
}

/// Items of a collection in two bottles: every item there is.
const std::vector<std::string>& all_day_items() {
  static const std::vector<std::string> items = [] {
    DayRecord pair;
    pair.voids = {Void{}};
    pair.voids.front().bottle = "day";
    auto all = day_items(pair);
    all.erase(all.begin()); // The void's own line has a number.
    return all;
  }();
  return items;
}

std::string not_asked(const std::string& item, const std::vector<std::string>& items) {
  return "this case asks no '" + item + "'" +
         (items.empty() ? std::string() : ": " + strict::suggestion(item, items, items.size()));
}

} // namespace

bool owns(const std::string& item) {
  return item == verdict_item || begins(item, verdict_item + ".") || begins(item, day_mark);
}

std::string unknown_item(const std::string& item) {
  if (item == verdict_item || holds(all_day_items(), item)) {
    return "";
  }
  if (begins(item, fault_mark)) {
    const std::string key = item.substr(fault_mark.size());
    return holds(fault_keys(), key) ? "" : "a fault: " + strict::suggestion(key, fault_keys(), 30);
  }
  if (begins(item, count_mark)) {
    return is_whole_number(item.substr(count_mark.size())) ? "" : "the number of a void: day.counts.1";
  }
  return "'reception', 'reception.fault.KEY', 'day.counts.NUMBER' or " +
         strict::suggestion(item, all_day_items(), all_day_items().size());
}

std::vector<std::string> words_of_item(const std::string& item) {
  if (item == verdict_item) {
    return {"accept", "qualify", "refuse"};
  }
  if (begins(item, fault_mark) || begins(item, count_mark) || item == "day.complete") {
    return {"yes", "no"};
  }
  if (item == "day.band") {
    return band_keys();
  }
  return item == "day.pattern" ? std::vector<std::string>{"none", "postural", "constant"}
                               : std::vector<std::string>{};
}

std::string refuse(const std::optional<Delivery>& delivery, const std::string& item,
                   const std::string& value) {
  if (const std::string wanted = unknown_item(item); !wanted.empty()) {
    return "the worksheet has no line '" + item + "'; write " + wanted;
  }
  if (!delivery) {
    return "this case asks nothing of the reception";
  }
  if (begins(item, day_mark)) {
    const auto items = delivery->day ? day_items(*delivery->day) : std::vector<std::string>{};
    if (!holds(items, item)) {
      return not_asked(item, items);
    }
  }
  if (value.empty()) {
    return "";
  }
  const auto words = words_of_item(item);
  if (words.empty()) {
    return number_of(value) ? "" : "'" + value + "' is no number";
  }
  return holds(words, value)
             ? ""
             : "'" + value + "' is no answer to '" + item + "': " + strict::suggestion(value, words);
}

} // namespace matula::reception
