package org.geneticsrules.expression;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.stream.Stream;
import org.geneticsrules.model.Locus;
import org.geneticsrules.trait.Sex;

/** What a diagram tests at one of its levels. */
public sealed interface Level {

    /**
     * Returns its name in conditions.
     *
     * @return the id of a locus, {@code sex}, or the pointer of the statement whose chance is drawn
     */
    String name();

    /**
     * Returns what it may be found to be.
     *
     * @return values in declared order; weights are given in this order
     */
    List<String> values();

    /** The sex of the animal. */
    record OfSex() implements Level {
        @Override
        public String name() {
            return Sex.VARIABLE;
        }

        @Override
        public List<String> values() {
            return Stream.of(Sex.values()).map(Sex::word).collect(ImmutableList.toImmutableList());
        }
    }

    /**
     * The expression of a locus.
     *
     * @param locus the locus
     */
    record OfLocus(Locus locus) implements Level {
        @Override
        public String name() {
            return locus.id();
        }

        @Override
        public List<String> values() {
            return locus.expressions();
        }
    }

    /**
     * The outcome of a draw.
     *
     * @param draw the draw
     */
    record OfDraw(Draw draw) implements Level {
        @Override
        public String name() {
            return draw.statement();
        }

        @Override
        public List<String> values() {
            return draw.values();
        }
    }
}
