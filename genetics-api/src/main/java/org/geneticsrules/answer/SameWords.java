package org.geneticsrules.answer;

import java.util.Comparator;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;

/** Whether two sentences, each under a model of its own, differ in no more than what the two models call their loci and alleles. */
final class SameWords {

    /** By title, one of the titles that stand for the same, in either model. */
    private final Map<String, String> same = new HashMap<>();

    /**
     * Compares what two models call the loci and alleles that have the same ids in both.
     *
     * @param own a model
     * @param other another
     */
    SameWords(Model own, Model other) {
        for (Locus locus : own.loci().values()) {
            Locus there = other.loci().get(locus.id());
            if (there != null) {
                join(locus.title(), there.title());
                for (Allele allele : locus.alleles().values()) {
                    Allele likewise = there.alleles().get(allele.id());
                    if (likewise != null) {
                        join(allele.title(), likewise.title());
                    }
                }
            }
        }
    }

    private void join(Optional<String> one, Optional<String> other) {
        if (one.isPresent() && other.isPresent() && !one.equals(other)) {
            String kept = root(one.get());
            same.put(root(other.get()), kept);
            same.putIfAbsent(one.get(), kept);
        }
    }

    private String root(String title) {
        String at = title;
        String next = same.getOrDefault(at, at);
        while (!next.equals(at)) {
            at = next;
            next = same.getOrDefault(at, at);
        }
        return at;
    }

    boolean are(String one, String other) {
        return one.equals(other) || (!same.isEmpty() && even(one).equals(even(other)));
    }

    /** A sentence with one title for all that stand for the same; longer ones are looked for first. */
    private String even(String sentence) {
        Pattern titles = Pattern.compile(same.keySet().stream()
                .sorted(Comparator.comparing(String::length).reversed())
                .map(Pattern::quote)
                .collect(Collectors.joining("|")));
        return titles.matcher(sentence).replaceAll(found -> Matcher.quoteReplacement(root(found.group())));
    }
}
