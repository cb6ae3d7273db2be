#include "engine/assets/world.hpp"
#include "engine/scenario/scenario.hpp"

#include <cstddef>
#include <cstdint>
#include <string_view>

/// Any text is read or refused with words; a scenario that is read can be refused nothing later.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace matula;
  static const matter::Catalogue catalogue = [] {
    scenario::Problems problems;
    return assets::load_catalogue(assets::folder(), problems);
  }();
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const auto read = scenario::parse(text, "fuzz.toml", catalogue);
  if (!read && scenario::to_text(read.error()).empty()) {
    __builtin_trap();
  }
  return 0;
}
