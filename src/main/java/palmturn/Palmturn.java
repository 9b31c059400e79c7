package palmturn;

/** Starts the program. */
public final class Palmturn {
  private Palmturn() {}

  public static void main(String[] args) {
    System.out.println("palmturn");
  }
}
