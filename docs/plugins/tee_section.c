/* A section shape: a T of one wall thickness, flange at the top, web below it, as `shape = "tee"` with width (of the
 * flange), height (over all) and wall. Thin-walled torsion, J = sum b t^3 / 3; the shear centre is where the middle
 * lines meet (Timoshenko & Goodier, arts. 108 and 126).
 *
 *     cc -std=c11 -O2 -fPIC -shared -o tee_section.so tee_section.c $(pkg-config --cflags bedbow)
 *     bedbow list --prove tee --plugin ./tee_section.so
 */
#include <bedbow/plugin.h>
#include <stdio.h>

static const char* const sizes[] = {"width", "height", "wall"};
static const double examples[] = {0.06, 0.08, 0.008};

/* A corner, with the shear stress of torsion along its wall. */
static bedbow_stress_point corner(double y, double z, double along_y, double along_z) {
  bedbow_stress_point p = {y, z, {0, 0}, {0, 0}, {along_y, along_z}};
  return p;
}

static int make(const double* size, size_t count, double nu, bedbow_section* s, char* message, size_t message_size) {
  const double b = size[0], h = size[1], t = size[2], web = h - t;
  (void)count;
  (void)nu;
  if (t >= b / 2 || t >= h / 2) {
    snprintf(message, message_size, "wall must be less than half of width and height");
    return 1;
  }
  s->A = b * t + web * t;
  const double c = (b * t * (web + t / 2) + web * t * web / 2) / s->A; /* centroid above the foot */
  const double flange = web + t / 2 - c, middle = web / 2 - c;         /* centroids of the two parts */
  s->Iyy = b * t * (t * t / 12 + flange * flange) + web * t * (web * web / 12 + middle * middle);
  s->Izz = t * b * b * b / 12 + web * t * t * t / 12;
  s->Iyz = 0;
  s->J = (b + h - t / 2) * t * t * t / 3;
  s->Ay = b * t * 5 / 6;
  s->Az = h * t * 5 / 6;
  s->shear_centre_y = 0;
  s->shear_centre_z = flange;

  const double top = h - c, under = web - c, foot = -c;
  const double outline[8][2] = {{-t / 2, foot}, {t / 2, foot}, {t / 2, under},  {b / 2, under},
                                {b / 2, top},   {-b / 2, top}, {-b / 2, under}, {-t / 2, under}};
  for (size_t i = 0; i < 8; ++i) {
    s->corners[2 * i] = outline[i][0];
    s->corners[2 * i + 1] = outline[i][1];
  }
  s->loop_ends[0] = 8;
  s->loop_count = 1;

  const double twist = t / s->J; /* on the faces of a thin wall */
  s->points[0] = corner(-b / 2, top, -twist, 0);
  s->points[1] = corner(b / 2, top, -twist, 0);
  s->points[2] = corner(t / 2, foot, 0, twist);
  s->points[3] = corner(-t / 2, foot, 0, -twist);
  /* On the neutral axis of the web: V Q / (I t), with Q of the web below it. */
  s->points[4] = corner(t / 2, 0, 0, twist);
  s->points[4].tau_Vz[1] = c * c / 2 / s->Iyy;
  /* In the middle of the flange: Q of half the flange. */
  s->points[5] = corner(0, top, -twist, 0);
  s->points[5].tau_Vy[0] = b * b / 8 / s->Izz;
  s->point_count = 6;
  return 0;
}

static const bedbow_shape shape = {sizeof shape, sizeof sizes / sizeof *sizes, sizes, examples, make};
static const bedbow_entry entry = {BEDBOW_PLUGIN_INTERFACE,
                                   sizeof entry,
                                   "section shape",
                                   "tee",
                                   "1.0",
                                   "flange at the top, web below it",
                                   "Timoshenko & Goodier, thin-walled",
                                   &shape};

const bedbow_entry* bedbow_plugin(uint32_t index) {
  return index == 0 ? &entry : NULL;
}
