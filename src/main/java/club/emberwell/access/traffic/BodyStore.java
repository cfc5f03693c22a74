package club.emberwell.access.traffic;

import io.vertx.core.Future;
import io.vertx.core.Vertx;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.file.AsyncFile;
import io.vertx.core.file.OpenOptions;
import io.vertx.core.streams.WriteStream;
import java.nio.file.Path;

/** Where the pieces of one body go while they arrive. */
interface BodyStore {
  /** Keeps the next piece. */
  void keep(Buffer piece);

  /** What holds the sender up where pieces come faster than they are written; null: nothing. */
  WriteStream<Buffer> stream();

  /** Nothing more comes. */
  Future<SentBody> whole();

  /** It will not be used. */
  void drop();

  static BodyStore inMemory() {
    Buffer bytes = Buffer.buffer();
    return new BodyStore() {
      @Override
      public void keep(Buffer piece) {
        bytes.appendBuffer(piece);
      }

      @Override
      public WriteStream<Buffer> stream() {
        return null;
      }

      @Override
      public Future<SentBody> whole() {
        return Future.succeededFuture(SentBody.inMemory(bytes));
      }

      @Override
      public void drop() {
        // nothing but memory
      }
    };
  }

  /** A new file that only this server can read. */
  static Future<BodyStore> inFile(Vertx vertx, Path folder) {
    return vertx
        .fileSystem()
        .mkdirs(folder.toString())
        .compose(
            made ->
                vertx
                    .fileSystem()
                    .createTempFile(folder.toString(), "emberwell-sent", "", "rw-------"))
        .compose(
            name ->
                vertx
                    .fileSystem()
                    .open(name, new OpenOptions().setRead(false))
                    .map(file -> (BodyStore) new InFile(vertx, name, file))
                    .onFailure(e -> vertx.fileSystem().delete(name)));
  }

  /** A file that is being written. */
  record InFile(Vertx vertx, String name, AsyncFile file) implements BodyStore {
    @Override
    public void keep(Buffer piece) {
      file.write(piece);
    }

    @Override
    public WriteStream<Buffer> stream() {
      return file;
    }

    @Override
    public Future<SentBody> whole() {
      return file.close().map(closed -> SentBody.inFile(Path.of(name)));
    }

    @Override
    public void drop() {
      file.close().onComplete(closed -> vertx.fileSystem().delete(name));
    }
  }
}
