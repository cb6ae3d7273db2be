#pragma once

#include "engine/sitting/event.hpp"

#include <functional>

namespace matula::bench {
struct Outcome;
}

namespace matula::scoring {

/// Told of every event of a replay once it has happened.
using Heard = std::function<void(const sitting::Event&, const bench::Outcome&)>;

} // namespace matula::scoring
