#include "engine/assets/world.hpp"

#include <cstdlib>
#include <system_error>

namespace matula::assets {

namespace {

bool holds_assets(const std::filesystem::path& folder) {
  std::error_code ignored;
  return std::filesystem::is_regular_file(folder / "chemistry" / "species.toml", ignored);
}

std::filesystem::path beside_program() {
  std::error_code failed;
  const std::filesystem::path program = std::filesystem::read_symlink("/proc/self/exe", failed);
  return failed ? std::filesystem::path("assets") : program.parent_path() / "assets";
}

} // namespace

std::filesystem::path folder() {
  if (const char* set = std::getenv("MATULA_ASSETS"); set != nullptr && *set != '\0') {
    return set;
  }
  const std::filesystem::path source = MATULA_ASSETS_FOLDER;
  return holds_assets(source) ? source : beside_program();
}

} // namespace matula::assets
