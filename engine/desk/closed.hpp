#pragma once

#include <filesystem>
#include <string>

namespace matula::desk {

/// What stands on the screen once a case of an examination has been handed in.
struct Closed {
  std::filesystem::path result_file; ///< Sealed to the instructor.
  std::string closing_code;          ///< To be copied into the register by hand.
};

} // namespace matula::desk
