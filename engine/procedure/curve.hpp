#pragma once

#include "engine/procedure/procedure.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace matula::procedure {

/// What a tube of a curve is, or which line of the calculation an item holds.
enum class CurveLine { Blank, Standard, Sample, Net, Read, Dilution, Value };

/// One line of the worksheet for a test with a curve, in the order in which they are worked.
struct CurveItem {
  CurveLine line = CurveLine::Value;
  std::size_t standard = 0; ///< Only for Standard: its place in the curve.
  std::string item;         ///< "turbidity.25"
  std::string words;        ///< "absorbance of the standard of 25 mg/dL"

  /// Whether it is read on the instrument; the others are worked out.
  [[nodiscard]] bool is_reading() const { return line <= CurveLine::Sample; }
};

/// Every line of a test's curve; empty for a test without one.
[[nodiscard]] std::vector<CurveItem> curve_items(const Procedure& test);

/// Every item of the worksheet that belongs to a test.
[[nodiscard]] std::vector<std::string> items_of(const Procedure& test);

} // namespace matula::procedure
