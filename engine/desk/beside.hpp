#pragma once

#include "sim/appearance/appearance.hpp"

#include <string>

namespace matula::desk {

/// A tube beside another one, and what each is called.
struct Beside {
  std::string caption;
  appearance::Appearance looks;
};

} // namespace matula::desk
