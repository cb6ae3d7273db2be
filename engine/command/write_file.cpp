#include "engine/command/write_file.hpp"

#include <fstream>
#include <ostream>
#include <system_error>

namespace matula::command {

bool write_file(const std::filesystem::path& file, const std::string& text, std::ostream& err) {
  std::error_code failed;
  if (file.has_parent_path()) {
    std::filesystem::create_directories(file.parent_path(), failed);
  }
  const std::filesystem::path beside = file.string() + ".part";
  std::ofstream out(beside, std::ios::binary);
  out << text;
  const bool written = static_cast<bool>(out.flush());
  out.close();
  if (written) {
    std::filesystem::rename(beside, file, failed);
  }
  if (!written || failed) {
    err << file.string() << ": found a place that cannot be written to; name another\n";
    std::filesystem::remove(beside, failed);
    return false;
  }
  return true;
}

} // namespace matula::command
