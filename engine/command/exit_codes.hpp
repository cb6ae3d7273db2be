#pragma once

namespace matula::command {

inline constexpr int exit_good = 0;
inline constexpr int exit_bad_input = 1;
inline constexpr int exit_wrong_call = 2;

} // namespace matula::command
