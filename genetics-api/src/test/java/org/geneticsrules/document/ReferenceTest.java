package org.geneticsrules.document;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;

class ReferenceTest {

    private static final Reference PINNED = new Reference("example.pea", "1.0.0", Optional.of("0123456789abcdef"));

    @Test
    void a_reference_means_the_document_of_its_id_and_version() {
        assertTrue(Reference.of("example.pea", "1.0.0").means(PINNED));
        assertTrue(PINNED.means(Reference.of("example.pea", "1.0.0")));
        assertFalse(Reference.of("example.pea", "1.0.1").means(PINNED));
        assertFalse(Reference.of("example.bean", "1.0.0").means(PINNED));
    }

    @Test
    void a_pinned_reference_means_one_content_only() {
        assertTrue(PINNED.means(new Reference("example.pea", "1.0.0", Optional.of("0123456789abcdef"))));
        assertFalse(PINNED.means(new Reference("example.pea", "1.0.0", Optional.of("fedcba9876543210"))));
    }

    @Test
    void its_text_shows_the_first_twelve_digits_of_the_hash() {
        assertEquals("example.pea 1.0.0", Reference.of("example.pea", "1.0.0").toString());
        assertEquals("example.pea 1.0.0 (sha256 0123456789ab...)", PINNED.toString());
        assertEquals("a 1 (sha256 01...)", new Reference("a", "1", Optional.of("01")).toString());
    }
}
