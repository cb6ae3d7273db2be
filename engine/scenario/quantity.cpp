#include "engine/scenario/quantity.hpp"

#include <algorithm>
#include <cmath>
#include <locale>
#include <sstream>

namespace matula::scenario {

namespace {

std::string plain(double value) {
  std::ostringstream out;
  out.imbue(std::locale::classic());
  out.precision(4);
  out << value;
  return out.str();
}

/// A round example inside the range.
double example(const Measure& measure) {
  const double middle = (measure.low + measure.high) / 2;
  if (middle <= 0) {
    return middle;
  }
  const double step = std::pow(10.0, std::floor(std::log10(middle)));
  return std::clamp(std::round(middle / step) * step, measure.low, measure.high);
}

const Unit* find_unit(const Measure& measure, const std::string& word) {
  const auto at = std::find_if(measure.units.begin(), measure.units.end(),
                               [&](const Unit& unit) { return unit.word == word; });
  return at == measure.units.end() ? nullptr : &*at;
}

std::string words_without_end_blanks(const std::string& text) {
  const std::size_t first = text.find_first_not_of(" \t");
  const std::size_t last = text.find_last_not_of(" \t");
  return first == std::string::npos ? "" : text.substr(first, last - first + 1);
}

} // namespace

std::optional<Written> split_quantity(const std::string& text) {
  std::istringstream in(words_without_end_blanks(text));
  in.imbue(std::locale::classic());
  Written written;
  if (!(in >> written.value) || !std::isfinite(written.value)) {
    return std::nullopt;
  }
  std::getline(in, written.unit);
  written.unit = words_without_end_blanks(written.unit);
  if (written.unit.empty() || std::isdigit(static_cast<unsigned char>(written.unit.front())) != 0) {
    return std::nullopt;
  }
  return written;
}

std::string allowed_words(const Measure& measure) {
  const std::string base = measure.units.front().word;
  std::string words = "from " + plain(measure.low) + " to " + plain(measure.high) + " " + base +
                      ", written as \"" + plain(example(measure)) + " " + base + "\"";
  if (measure.units.size() > 1) {
    words += " (units:";
    for (const Unit& unit : measure.units) {
      words += (unit.word == base ? " " : ", ") + unit.word;
    }
    words += ")";
  }
  return words;
}

std::optional<double> read_quantity(const strict::Table& table, const std::string& key,
                                    const Measure& measure) {
  const std::string expected = allowed_words(measure);
  if (!table.has(key)) {
    table.complain(key, "a quantity " + expected);
    return std::nullopt;
  }
  if (!table.is_text(key)) {
    table.complain(key, "a number with its unit, in quotes: " + expected);
    return std::nullopt;
  }
  const std::optional<Written> written = split_quantity(table.text_or(key, ""));
  if (!written) {
    table.complain(key, "a number with its unit: " + expected);
    return std::nullopt;
  }
  const Unit* unit = find_unit(measure, written->unit);
  if (unit == nullptr) {
    table.complain(key, "another unit than '" + written->unit + "': " + expected);
    return std::nullopt;
  }
  const double value = written->value * unit->in_base;
  const double first = measure.units.front().in_base;
  constexpr double rounding = 1e-9; // Of the conversion between units.
  const double slack = rounding * std::max(std::abs(measure.high), std::abs(measure.low)) * first;
  if (value < measure.low * first - slack || value > measure.high * first + slack) {
    table.complain(key, "a quantity " + expected);
    return std::nullopt;
  }
  return value;
}

double quantity_or(const strict::Table& table, const std::string& key, const Measure& measure,
                   double fallback) {
  return table.has(key) ? read_quantity(table, key, measure).value_or(fallback) : fallback;
}

} // namespace matula::scenario
