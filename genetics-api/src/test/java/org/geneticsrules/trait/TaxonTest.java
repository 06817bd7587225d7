package org.geneticsrules.trait;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.google.common.collect.ImmutableMap;
import java.util.Optional;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;
import org.junit.jupiter.api.Test;

class TaxonTest {

    private static final Taxon.Young KITS = new Taxon.Young("kit", "kits");

    @Test
    void young_with_words_of_their_own() {
        assertEquals("kit", KITS.of(1));
        assertEquals("kits", KITS.of(0));
        assertEquals("kits", KITS.of(2));
        assertEquals("a kit", KITS.any());
        assertEquals("every kit", KITS.every());
        assertEquals("no kit", KITS.none());
        ImmutableMap.of("infant", "an infant", "elver", "an elver", "cub", "a cub")
                .forEach((one, words) -> assertEquals(words, new Taxon.Young(one, one + "s").any()));
    }

    @Test
    void young_of_any_kind() {
        assertEquals("young", Taxon.Young.NEUTRAL.of(1));
        assertEquals("young", Taxon.Young.NEUTRAL.of(3));
        assertEquals("one of the young", Taxon.Young.NEUTRAL.any());
        assertEquals("each of the young", Taxon.Young.NEUTRAL.every());
        assertEquals("none of the young", Taxon.Young.NEUTRAL.none());
    }

    /** The first letter alone decides, also where it is the first of the vowels. */
    @Test
    void a_vowel_takes_an() {
        assertEquals("an ape", new Taxon.Young("ape", "apes").any());
        assertEquals("a duckling", new Taxon.Young("duckling", "ducklings").any());
    }

    @Test
    void the_document_states_the_words_where_there_are_any() {
        assertEquals(
                new ObjectBuilder()
                        .with("name", "Mustela furo")
                        .with("ncbi", Node.number(9669))
                        .with(
                                "young",
                                new ObjectBuilder()
                                        .with("one", "kit")
                                        .with("many", "kits")
                                        .build())
                        .build(),
                new Taxon("Mustela furo", Optional.of(9669), Optional.of(KITS)).toNode());
        assertEquals(
                new ObjectBuilder()
                        .with("name", "Mustela furo")
                        .with("ncbi", Node.number(9669))
                        .build(),
                Taxon.of("Mustela furo", 9669).toNode());
    }
}
