#include "workbench/cautions.h"

namespace keenfall::workbench {

std::vector<std::string> cautions() {
  return {
      "Cut away from your body and from the hand that holds. Clamp the stock on something stable.",
      "Wear a cut-resistant glove on the holding hand, let a dropped knife fall, and cover the "
      "edge "
      "between stations.",
      "A blunt edge slips: decide on a largest force as well as on a stop level.",
      "Stand out of the recoil of rope or cord under tension.",
      "At wheels and belts: no gloves, no loose cuffs, guards fitted, eyes protected. Keep "
      "grinding "
      "dust wet or extracted.",
      "Old floor coverings and their backings can hold asbestos, sharps or mould: do not cut them "
      "until they have been assessed.",
      "Local law on knives, your employer's risk assessment and makers' instructions come first "
      "wherever they differ. Keenfall does not certify a blade or a workplace as safe."};
}

}  // namespace keenfall::workbench
