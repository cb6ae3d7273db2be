#pragma once

#include "engine/sitting/session.hpp"

#include <cstddef>
#include <set>
#include <vector>

namespace matula::scoring {

/// Which vessels a log is done with, so that a replay need not let them live on to its end: a tube that was
/// read half an hour before the sheet was handed in costs as much as one that is still watched.
class LastUse {
public:
  explicit LastUse(const std::vector<sitting::Event>& log);

  /// Lays aside what the log is done with after its event number `done`, counted from 0.
  void lay_aside(sitting::Session& session, std::size_t done);

private:
  std::vector<std::vector<bench::VesselName>> ends_; ///< By event: the vessels it is the last to name.
  std::set<bench::VesselName> done_with_;
};

} // namespace matula::scoring
