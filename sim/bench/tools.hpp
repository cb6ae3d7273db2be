#pragma once

namespace matula::bench {

/// What burner, bath, hands and thermometer do; the values in use come from assets/instruments.toml.
struct Tools {
  double flame_w = 45;         ///< Heat the burner puts into the liquid of a tube.
  double flame_height_mm = 25; ///< Height of liquid it plays on.
  double bath_warming_c_per_s = 0.5;
  double bath_cooling_share_per_s = 3e-4; ///< Of the distance to the target.
  double swirl_shear_per_s = 60;
  double invert_shear_per_s = 150;
  double thermometer_step_c = 0.5;
  double thermometer_bulb_ml = 2;    ///< Least liquid that covers the bulb.
  double flame_reach_ml = 0.5;       ///< Least liquid worth holding in a flame.
  double bump_boiling = 0.2;         ///< Boiling (0..1) from which a tube held still can bump.
  double bumps_per_s = 0.25;         ///< While it is held still and boils hard.
  double bumps_per_s_moving = 0.004; ///< While it is kept moving but filled beyond half its capacity.
  double bump_low_ml = 0.3;          ///< Liquid thrown out by one bump, least and most.
  double bump_high_ml = 1.5;
  double water_bottle_ml = 45;  ///< Distilled water standing ready in a jar of its own.
  double rotor_radius_cm = 16;  ///< To the middle of a spun tube's liquid.
  double rotor_most_rcf = 3000; ///< Beyond it glass tubes break.
  double rotor_balance_g = 0.5; ///< Most two opposite tubes may differ.
  double rotor_run_s = 30;      ///< To full speed, and as long to a stop without the brake.
  double paper_pore_um = 2.5;   ///< Particles so wide are held back half.
  double paper_sharpness = 4;   ///< How fast that share rises with width.
  double paper_holds_ml = 0.4;  ///< Liquid a wetted paper keeps.
  double paper_ml_per_s = 0.1;
};

} // namespace matula::bench
