#pragma once

#include "engine/examination/pack.hpp"

namespace matula::examination {

/// The sheet for the examination room, to be printed: class passphrase, session code, the pack's fingerprint,
/// and the register of closing codes with a line a learner. `passphrase` and `nonce` as they are read out.
[[nodiscard]] std::string room_sheet(const Pack& pack, const std::vector<StudentCases>& students,
                                     const std::string& passphrase, const std::string& nonce);

} // namespace matula::examination
