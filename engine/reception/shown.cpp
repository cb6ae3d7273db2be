#include "engine/reception/shown.hpp"

#include "engine/reception/book.hpp"
#include "engine/reception/day.hpp"
#include "engine/reception/day_parts.hpp"

#include <cmath>
#include <fmt/format.h>

namespace matula::reception {

namespace {

std::string time_or_blank(const std::optional<int>& time) {
  return time ? say_clock(*time) : "";
}

void add_times(const Delivery& delivery, std::vector<WrittenLine>& form) {
  if (delivery.kind == "day") {
    form.emplace_back("Start (bladder emptied)", time_or_blank(delivery.start_min));
    form.emplace_back("End (last void)", time_or_blank(delivery.stop_min));
  } else {
    form.emplace_back("Passed at", time_or_blank(delivery.passed_min));
  }
}

std::vector<WrittenLine> form_of(const Delivery& delivery, const Book& book) {
  std::vector<WrittenLine> form{
      {"Patient", delivery.form_name}, {"Number", delivery.form_number},
      {"Age, sex", delivery.age_sex},  {"Ward", delivery.ward},
      {"Question", delivery.question}, {"Specimen", book.label("kind", delivery.kind)}};
  add_times(delivery, form);
  if (!delivery.remark.empty()) {
    form.emplace_back("Remark", delivery.remark);
  }
  form.emplace_back("Received (our stamp)", say_clock(delivery.received_min));
  return form;
}

std::vector<WrittenLine> label_of(const Delivery& delivery, const Book& book) {
  if (delivery.label == "none") {
    return {};
  }
  return {{"Name", delivery.label_name.value_or("")},
          {"Number", delivery.label_number.value_or("")},
          {"Preservative", book.label("preservative", delivery.label_preservative)}};
}

std::vector<WrittenLine> container_of(const Delivery& delivery, const Book& book) {
  return {{"Container", book.label("container", delivery.container)},
          {"Volume", delivery.day ? "to be added up from the sheet" : say(delivery.volume_ml) + " mL"},
          {"Outside", delivery.leaking ? "wet, liquid creeps from under the lid" : "dry, lid tight"},
          {"Seen inside", book.label("contamination", delivery.contamination)},
          {"On the way", delivery.storage == "room" ? "at room temperature" : "in the refrigerator, 4 °C"}};
}

std::vector<std::pair<std::string, std::vector<WrittenLine>>> faults_of(const Delivery& delivery,
                                                                        const Book& book) {
  std::vector<std::pair<std::string, std::vector<WrittenLine>>> groups{
      {"Identity", {}}, {"Times", {}}, {"Container and contents", {}}, {"24-hour collection", {}}};
  for (const Fault& fault : book.faults) {
    const std::size_t group = fault.group == "identity" ? 0
                              : fault.group == "time"   ? 1
                              : fault.group == "day"    ? 3
                                                        : 2;
    groups[group].second.emplace_back(fault.key, fault.label);
  }
  if (delivery.kind != "day") {
    groups.pop_back();
  }
  return groups;
}

std::string bands_in_words(const DayRules& rules) {
  std::string words;
  for (const Band& band : rules.bands) {
    if (!std::isfinite(band.up_to_g)) {
      return words + band.label + " above";
    }
    words +=
        fmt::format("{} up to {} g{}, ", band.label, say(band.up_to_g),
                    band.also_up_to_g < band.up_to_g
                        ? fmt::format(" (other books draw this line at {} to 3.5 g)", say(band.also_up_to_g))
                        : "");
  }
  return words;
}

ShownDay show_day(const DayRecord& day, const DayRules& rules) {
  ShownDay shown;
  shown.weight = say(day.weight_kg) + " kg";
  shown.sex = day.sex;
  const IndexRange& range = rules.index.at(day.sex);
  shown.index_range = fmt::format("{} to {} mg/kg", say(range.low_mg_per_kg), say(range.high_mg_per_kg));
  shown.pair = day.pair();
  for (const Void& one : day.voids) {
    shown.voids.push_back({say_clock(one.at_min), say(one.volume_ml) + " mL", one.kept,
                           one.bottle == "whole" ? "bottle" : one.bottle});
  }
  for (const Bottle& bottle : bottles_of(day)) {
    const std::string name =
        bottle.key == "whole" ? "The bottle, mixed" : "The " + bottle.key + " bottle, mixed";
    std::string words = day.protein_item.empty() ? fmt::format("protein {:.2f} g/L", bottle.protein_g_per_l)
                                                 : std::string("protein: yours to measure");
    words += fmt::format(", creatinine {:.2f} g/L", bottle.creatinine_g_per_l);
    if (shown.pair) {
      words += fmt::format(", filled over {} h", say(bottle.hours));
    }
    shown.bottles.emplace_back(name, words);
  }
  shown.bands = bands_in_words(rules);
  return shown;
}

} // namespace

Shown show(const Delivery& delivery, const Book& book) {
  Shown shown;
  shown.kind = delivery.kind;
  shown.form = form_of(delivery, book);
  for (const std::string& request : delivery.requests) {
    shown.requests.push_back(book.label("request", request));
  }
  shown.label_place = delivery.label;
  shown.label = label_of(delivery, book);
  shown.container = container_of(delivery, book);
  shown.faults = faults_of(delivery, book);
  if (delivery.day) {
    shown.day = show_day(*delivery.day, book.day);
  }
  return shown;
}

} // namespace matula::reception
