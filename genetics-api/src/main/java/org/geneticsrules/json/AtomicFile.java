package org.geneticsrules.json;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/** Replaces a file as a whole: whoever reads meanwhile, or after a failure, finds the old text or the new one. */
final class AtomicFile {

    private static final int MOST_ATTEMPTS = 100;

    private AtomicFile() {}

    static void write(Path file, String text) throws IOException {
        Path target = Files.isSymbolicLink(file) ? file.toRealPath() : file.toAbsolutePath();
        Path temporary = temporary(target, text);
        try {
            move(temporary, target);
        } finally {
            Files.deleteIfExists(temporary);
        }
    }

    /** Beside the target, because a move is atomic only within one file system. */
    private static Path temporary(Path target, String text) throws IOException {
        for (int attempt = 1; ; attempt++) {
            Path temporary = target.resolveSibling("." + target.getFileName() + "." + attempt + ".tmp");
            try {
                Files.createFile(temporary);
            } catch (FileAlreadyExistsException e) {
                if (attempt == MOST_ATTEMPTS) {
                    throw e;
                }
                continue;
            }
            return filled(temporary, text);
        }
    }

    private static Path filled(Path temporary, String text) throws IOException {
        boolean complete = false;
        try {
            Files.writeString(temporary, text, StandardCharsets.UTF_8, StandardOpenOption.SYNC);
            complete = true;
            return temporary;
        } finally {
            if (!complete) {
                Files.deleteIfExists(temporary);
            }
        }
    }

    private static void move(Path from, Path to) throws IOException {
        try {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
        }
    }
}
