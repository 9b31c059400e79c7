package palmturn.lab.draw;

/** The material of a surface. */
enum Material {
  NOTHING,
  SKIN,
  UPPER_ARM,
  SHIRT,
  SLEEVE,
  TROUSERS,
  WALL,
  FLOOR,
  BOARD,
  SHELF,
  BOOKS
}
