#pragma once

namespace matula::instrument {

/// What is added to a reading, step by step; relative density.
struct Corrections {
  double zero = 0;
  double temperature = 0;
  double protein = 0;
  double glucose = 0;

  [[nodiscard]] double sum() const { return zero + temperature + protein + glucose; }
};

/// What a reading is corrected for.
struct ToCorrect {
  double zero_error = 0; ///< Reading in distilled water at calibration temperature, less 1.000.
  double temperature_c = 20;
  double protein_g_dl = 0;
  double glucose_g_dl = 0;
};

/// The arithmetic a laboratory has written down: so much for each so many degrees and each g/dL.
struct WrittenRule {
  double calibration_c = 15;
  double per_degrees_c = 3; ///< 0.001 for every so many degrees; added above, taken off below.
  double protein_per_g_dl = 0.003;
  double glucose_per_g_dl = 0.004;
};

/// By the written rule, unrounded: whoever writes a line down rounds the sum, not the steps.
[[nodiscard]] Corrections rule_correction(const WrittenRule& rule, const ToCorrect& reading);

/// Published properties a physical correction needs.
struct Physical {
  double calibration_c = 15;
  double glass_expansion_per_k = 25e-6;   ///< ISO 1768:1975.
  double protein_volume_ml_per_g = 0.733; ///< Partial specific volume of serum albumin, common practice.
  double glucose_volume_ml_per_g = 112.1 / 180.156; ///< CRC Handbook, concentrative properties, 20 °C.
};

/// By physics: the relative density at calibration temperature of the liquid without its protein and glucose.
/// `read` is the reading at the surface.
[[nodiscard]] Corrections physical_correction(const Physical& physical, double read,
                                              const ToCorrect& reading);

/// What 1 g/dL of a substance of this specific volume adds to the relative density at 20 °C.
[[nodiscard]] double increment_per_g_dl(double volume_ml_per_g);

/// To the nearest division of 0.001; halves go up.
[[nodiscard]] double to_division(double relative_density);

} // namespace matula::instrument
