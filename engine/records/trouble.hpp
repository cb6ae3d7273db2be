#pragma once

#include <stdexcept>
#include <string>

namespace matula::records {

/// Why the store could not do what was asked, in words for the instructor. Whatever was being written is as
/// it was before.
class Trouble : public std::runtime_error {
public:
  using std::runtime_error::runtime_error;
};

} // namespace matula::records
