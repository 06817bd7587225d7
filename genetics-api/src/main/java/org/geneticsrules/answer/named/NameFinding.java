package org.geneticsrules.answer.named;

import com.google.common.collect.ImmutableList;
import java.util.List;
import org.geneticsrules.vocabulary.Conversion;
import org.geneticsrules.vocabulary.Meaning;
import org.geneticsrules.vocabulary.Naming;

/** What was found out about names. */
public sealed interface NameFinding {

    /**
     * What an animal is called.
     *
     * @param namings one for each vocabulary asked
     */
    record Called(List<Naming> namings) implements NameFinding {
        /**
         * Copies the list.
         *
         * @param namings one for each vocabulary asked
         */
        public Called {
            namings = ImmutableList.copyOf(namings);
        }
    }

    /**
     * What a name says of an animal.
     *
     * @param meaning all that it may mean on the occasion
     */
    record Meant(Meaning meaning) implements NameFinding {}

    /**
     * What names are in another vocabulary, or at another time.
     *
     * @param conversion the candidates, and what is lost
     */
    record Converted(Conversion conversion) implements NameFinding {}
}
