package palmturn.app.desk;

import java.util.concurrent.Executor;
import palmturn.app.tasks.Tasks;

/**
 * The threads that work runs on.
 *
 * @param background runs what is slow
 * @param writing writes marks, in order
 * @param screen hands work to the screen's thread
 */
public record Threads(Tasks background, Tasks writing, Executor screen) {}
