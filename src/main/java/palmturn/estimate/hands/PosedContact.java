package palmturn.estimate.hands;

/**
 * A contact as motion and sound found it.
 *
 * @param timeS real seconds, on the picture's clock
 * @param pose +1 or −1, the same for all contacts by one side of the hand; 0 where unknown
 * @param confidence of the pose, 0 to 1
 */
record PosedContact(double timeS, int pose, double confidence) {}
