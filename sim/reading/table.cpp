#include "sim/reading/table.hpp"

#include "sim/reading/cloud.hpp"
#include "sim/reading/copper.hpp"

namespace matula::reading {

std::vector<std::string> grade_table(const Scale& scale) {
  switch (scale.kind) {
  case ScaleKind::HeatCloud:
  case ScaleKind::AcidCloud:
    return cloud_table();
  case ScaleKind::CopperColour:
    return copper_table();
  case ScaleKind::Colour:
  case ScaleKind::CloudRing:
    return scale.colour.seen;
  case ScaleKind::Powder:
    return scale.powder.seen;
  case ScaleKind::Paper:
    return {};
  }
  return {};
}

} // namespace matula::reading
