#pragma once

#include "engine/command/arguments.hpp"

#include <iosfwd>

namespace matula::command {

/// Opens the window; gives the exit code after it is closed.
int run_open_bench(const OpenBench& asked, std::ostream& err);

} // namespace matula::command
