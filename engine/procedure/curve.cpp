#include "engine/procedure/curve.hpp"

#include <fmt/format.h>

namespace matula::procedure {

std::vector<CurveItem> curve_items(const Procedure& test) {
  std::vector<CurveItem> items;
  if (!test.curve) {
    return items;
  }
  const std::string& unit = test.number.unit;
  const auto add = [&](CurveLine line, const std::string& ending, std::string words) {
    items.push_back({line, 0, test.key + "." + ending, std::move(words)});
  };
  add(CurveLine::Blank, "blank", "absorbance of the blank");
  for (std::size_t i = 0; i < test.curve->values.size(); ++i) {
    const std::string value = fmt::format("{:g}", test.curve->values[i]);
    add(CurveLine::Standard, value, fmt::format("absorbance of the standard of {} {}", value, unit));
    items.back().standard = i;
  }
  add(CurveLine::Sample, "sample", "absorbance of the specimen");
  add(CurveLine::Net, "net", "absorbance of the specimen less its blank");
  add(CurveLine::Read, "read", "read off your curve, " + unit);
  add(CurveLine::Dilution, "dilution", "times the specimen was diluted (1: not at all)");
  add(CurveLine::Value, "value", "in the specimen, " + unit);
  return items;
}

std::vector<std::string> items_of(const Procedure& test) {
  std::vector<std::string> items;
  for (const CurveItem& one : curve_items(test)) {
    items.push_back(one.item);
  }
  if (items.empty()) {
    items.push_back(test.item());
  }
  return items;
}

} // namespace matula::procedure
