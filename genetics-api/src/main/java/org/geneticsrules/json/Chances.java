package org.geneticsrules.json;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;

/** The document form of chances: exact, with a rounded decimal beside. Stateless and thread-safe. */
final class Chances {

    private static final int PLACES = 6;

    private Chances() {}

    static Node of(Probability chance) {
        BigDecimal decimal = new BigDecimal(chance.numerator())
                .divide(new BigDecimal(chance.denominator()), PLACES, RoundingMode.HALF_EVEN);
        return new ObjectBuilder()
                .with("numerator", chance.numerator().toString())
                .with("denominator", chance.denominator().toString())
                .with("decimal", decimal.toPlainString())
                .build();
    }

    /** A list of outcomes, each with its chance, in the order of the distribution. */
    static <T> Node of(Distribution<T> distribution, String name, Function<? super T, Node> form) {
        List<Node> items = new ArrayList<>();
        distribution
                .asMap()
                .forEach((outcome, chance) -> items.add(new ObjectBuilder()
                        .with(name, form.apply(outcome))
                        .with("probability", of(chance))
                        .build()));
        return new Node.ListNode(items);
    }

    static String decimal(double number) {
        return BigDecimal.valueOf(number)
                .setScale(PLACES, RoundingMode.HALF_EVEN)
                .toPlainString();
    }
}
