package palmturn.trial;

import java.util.AbstractList;
import java.util.List;
import java.util.RandomAccess;

/** An unchangeable list of numbers that takes 8 bytes for each; boxed ones take 20. */
final class NumberList extends AbstractList<Double> implements RandomAccess {
  private final double[] numbers;

  private NumberList(double[] numbers) {
    this.numbers = numbers;
  }

  static List<Double> of(double[] numbers) {
    return new NumberList(numbers.clone());
  }

  static List<Double> copyOf(List<Double> list) {
    return list instanceof NumberList
        ? list
        : new NumberList(list.stream().mapToDouble(Double::doubleValue).toArray());
  }

  @Override
  public Double get(int index) {
    return numbers[index];
  }

  @Override
  public int size() {
    return numbers.length;
  }
}
