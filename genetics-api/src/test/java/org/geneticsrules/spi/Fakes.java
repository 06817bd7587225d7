package org.geneticsrules.spi;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Providers that hold their documents in memory. */
final class Fakes {

    private Fakes() {}

    /** Lists documents in order of their names; a document without text opens nothing. */
    abstract static class InMemory implements GeneticsProvider {
        private final TreeMap<String, String> texts = new TreeMap<>();

        InMemory(Map<String, String> texts) {
            this.texts.putAll(texts);
        }

        @Override
        public List<String> documents() {
            return List.copyOf(texts.keySet());
        }

        @Override
        public InputStream open(String name) {
            String text = texts.get(name);
            return text.isEmpty() ? null : new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8));
        }
    }

    @Plugin(
            id = "example.otters",
            version = "1.0.0",
            title = "Otters",
            licence = "CC0-1.0",
            defaultModel = "example.otters.coat")
    static final class Otters extends InMemory {
        Otters(Map<String, String> texts) {
            super(texts);
        }
    }

    @Plugin(id = "example.seals", version = "2.0.0", title = "Seals", licence = "CC0-1.0")
    static final class Seals extends InMemory {
        Seals(Map<String, String> texts) {
            super(texts);
        }
    }

    @Plugin(id = "Two Words", version = "", title = " ", licence = "CC0-1.0")
    static final class Nameless extends InMemory {
        Nameless() {
            super(Map.of());
        }
    }

    static final class Unannotated extends InMemory {
        Unannotated() {
            super(Map.of());
        }
    }

    static String traits(String id) {
        return Workshop.text("traits.json.txt", "id", id);
    }

    static String model(String id) {
        return Workshop.text("model.json.txt", "id", id);
    }
}
