#include "engine/command/hand_written.hpp"

#include "engine/strict/file.hpp"

namespace matula::command {

tl::expected<HandWritten, scenario::Problems> read_hand_written(const std::string& file,
                                                                const matter::Catalogue& catalogue) {
  auto scenario = scenario::load(file, catalogue);
  if (!scenario) {
    return tl::make_unexpected(scenario.error());
  }
  HandWritten both{std::move(*scenario), ""};
  if (!strict::read_text(file, both.text)) { // Gone since a moment ago.
    return tl::make_unexpected(scenario::Problems{{file, 0, 0, "", "no readable file", "a scenario file"}});
  }
  return both;
}

} // namespace matula::command
