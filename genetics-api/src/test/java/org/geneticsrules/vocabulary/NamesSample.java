package org.geneticsrules.vocabulary;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.trait.BoxSet;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.vocabulary.Naming.OfName;
import org.geneticsrules.vocabulary.RandomNames.Look;

/** A random vocabulary, its twin, and a random animal to be named by it. */
final class NamesSample {
    final RandomNames random;
    final PlainNames plain;
    final NamesTwin twin;
    final Vocabulary vocabulary;
    final Look look;

    NamesSample(long seed) {
        random = new RandomNames(seed);
        plain = random.vocabulary();
        twin = new NamesTwin(plain);
        vocabulary = RandomNames.vocabulary(plain);
        look = random.look(plain.states(), plain.seasons());
    }

    Naming naming() {
        return Naming.of(vocabulary, Phenotype.from(look.seen()), look.occasion());
    }

    Map<String, OfName> named() {
        Map<String, OfName> named = new LinkedHashMap<>();
        naming().facets()
                .forEach(facet ->
                        facet.names().forEach(one -> named.put(one.name().word(), one)));
        return named;
    }

    Set<Map<String, String>> points(BoxSet set) {
        return twin.points.stream().filter(set::contains).collect(Collectors.toCollection(LinkedHashSet::new));
    }
}
