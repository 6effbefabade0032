/** Where each camera of a site stands and looks, without a window. */

import type { Site } from "../site/types.ts";
import { type CameraView, makeCameraView } from "./cameraView.ts";

export const siteViews = (site: Site): CameraView[] =>
  site.cameras.map((camera) => makeCameraView(site, camera));
