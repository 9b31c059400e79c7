package palmturn.app.session;

import java.nio.file.Path;
import palmturn.app.desk.OpenSession;
import palmturn.app.desk.SessionOpener;
import palmturn.app.inbox.Inbox;
import palmturn.settings.SeenMessages;
import palmturn.store.SessionFolder;
import palmturn.work.search.InboxSearch;

/** The sessions of the inbox, as the window opens them. */
record InboxSessions(OpenSession session, SessionOpener opener, SeenMessages seen)
    implements Inbox.Sessions {
  @Override
  public boolean isOpen(Path folder) {
    SessionFolder open = session.folder();
    return open != null && normal(open.folder()).equals(normal(folder));
  }

  private static Path normal(Path path) {
    return path.toAbsolutePath().normalize();
  }

  @Override
  public void open(Path folder) {
    opener.open(folder);
  }

  @Override
  public int unseen(InboxSearch.Found found) {
    return seen.countUnseen(found.path(), found.messages());
  }
}
