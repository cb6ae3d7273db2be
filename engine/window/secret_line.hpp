#pragma once

#include "engine/seal/secret.hpp"
#include "engine/window/widgets.hpp"

namespace matula::window {

/// A line for a passphrase, shown as stars and never told to the map of controls. It is kept in `words` alone
/// (which ends with a 0): what ImGui holds of it is wiped when the line is left. True when it holds
/// something.
bool secret_line(Widgets& widgets, const char* name, seal::Secret& words, float width);

} // namespace matula::window
