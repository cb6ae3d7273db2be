#include "engine/drafting/field_rows.hpp"

#include "engine/drafting/entry.hpp"
#include "engine/drafting/substances.hpp"

#include <fmt/format.h>

namespace matula::drafting {

namespace {

using Kind = author::Field::Kind;

Entry entry_of(Kind kind) {
  switch (kind) {
  case Kind::OneOf:
    return Entry::Choice;
  case Kind::Number:
  case Kind::Whole:
    return Entry::Number;
  case Kind::Numbers:
    return Entry::Numbers;
  case Kind::YesNo:
    return Entry::YesNo;
  case Kind::Quantity:
    return Entry::Quantity;
  case Kind::Words:
  case Kind::MaybeWords:
  case Kind::Clock:
  case Kind::ListOf:
    break;
  }
  return Entry::Line;
}

std::string range_words(double low, double high, const std::string& unit) {
  return fmt::format("{:g} to {:g}{}{}", low, high, unit.empty() ? "" : " ", unit);
}

/// A step a person would take over a range: whole numbers by five (by one where there are few), others by a
/// quarter.
double step_of(const author::Field& field) {
  constexpr double many = 10;
  constexpr double fives = 5;
  return field.kind != Kind::Whole ? 0 : field.range.high > many ? fives : 1;
}

} // namespace

Row row_of(const author::Field& field, const std::string& section, const std::string& text) {
  Row row;
  row.path = section + "." + field.key;
  row.label = spoken(field.key);
  row.entry = entry_of(field.kind);
  row.value = typed_at(text, row.path);
  row.about = field.about;
  row.optional = !field.needed;
  if (field.kind == Kind::YesNo) {
    row.choices = {"true", "false"};
  } else if (field.kind == Kind::OneOf) {
    row.choices = field.allowed;
  } else if (field.kind == Kind::Clock) {
    row.range = "07:40, or 07:40 day 2";
  } else if (field.kind == Kind::Quantity) {
    row.unit = field.measure.units.front().word;
    row.range = range_words(field.measure.low, field.measure.high, row.unit);
  } else if (row.entry == Entry::Number || row.entry == Entry::Numbers) {
    row.range = range_words(field.range.low, field.range.high, field.range.unit);
  }
  row.can_step = row.entry == Entry::Number || row.entry == Entry::Quantity;
  row.step = step_of(field);
  return row;
}

std::vector<Row> rows_of(const author::Fields& fields, const std::string& section, const std::string& text) {
  std::vector<Row> rows;
  for (const author::Field& field : fields) {
    if (field.kind != Kind::ListOf) {
      rows.push_back(row_of(field, section, text));
    }
  }
  return rows;
}

} // namespace matula::drafting
