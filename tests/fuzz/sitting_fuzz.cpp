#include "engine/sitting/event_json.hpp"
#include "engine/sitting/log.hpp"
#include "engine/sitting/steps.hpp"

#include <cstddef>
#include <cstdint>
#include <string_view>

/// Any text is read or refused; what is read is written and read again to the same lines.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace matula;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  (void)sitting::parse_steps(text, "fuzz");
  const auto log = sitting::parse_log(text, "fuzz");
  if (!log) {
    return 0;
  }
  std::string again = sitting::to_line(log->header) + "\n";
  for (const auto& event : log->events) {
    again += sitting::to_line(event) + "\n";
  }
  const auto second = sitting::parse_log(again, "again");
  if (!second || second->events.size() != log->events.size()) {
    __builtin_trap();
  }
  return 0;
}
