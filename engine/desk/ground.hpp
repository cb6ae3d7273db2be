#pragma once

#include "engine/scenario/problem.hpp"

#include <tl/expected.hpp>

#include <filesystem>
#include <map>
#include <memory>
#include <string>
#include <vector>

namespace matula::assets {
struct World;
}
namespace matula::scoring {
struct Standards;
}

namespace matula::desk {

/// The world and what work is held against, read once and shared by every sitting of a run.
class Ground {
public:
  [[nodiscard]] static tl::expected<Ground, scenario::Problems> load();
  ~Ground();
  Ground(Ground&&) noexcept;
  Ground& operator=(Ground&&) noexcept;

  [[nodiscard]] const assets::World& world() const { return *world_; }
  [[nodiscard]] const scoring::Standards& standards() const { return *standards_; }
  [[nodiscard]] const std::filesystem::path& assets_folder() const { return folder_; }
  [[nodiscard]] const std::string& caution(const std::string& key) const; ///< Empty for an unknown key.
  [[nodiscard]] std::string reagent_label(const std::string& key) const;
  /// Short, for the bottle's own label; the full label when there is no shorter one.
  [[nodiscard]] std::string bottle_label(const std::string& key) const;
  [[nodiscard]] std::string reagent_caution(const std::string& key) const;
  [[nodiscard]] bool needs_hood(const std::string& reagent) const;
  [[nodiscard]] bool catches_fire(const std::string& reagent) const;
  [[nodiscard]] double drop_ml(const std::string& reagent) const; ///< Volume of one drop.
  [[nodiscard]] std::vector<std::string> odour_words() const;     ///< Words a nose may find.
  [[nodiscard]] std::vector<std::string>
  colour_words() const; ///< Words the reference reader has for urine's colour.

private:
  Ground();
  std::filesystem::path folder_;
  std::map<std::string, std::string> bottle_labels_;
  std::unique_ptr<const assets::World> world_;
  std::unique_ptr<const scoring::Standards> standards_;
};

} // namespace matula::desk
