package palmturn.lab.draw;

/** What a surface is made of. */
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
