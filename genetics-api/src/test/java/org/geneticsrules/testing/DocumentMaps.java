package org.geneticsrules.testing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.Node.FlagNode;
import org.geneticsrules.document.Node.ListNode;
import org.geneticsrules.document.Node.NumberNode;
import org.geneticsrules.document.Node.ObjectNode;
import org.geneticsrules.document.Node.TextNode;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelDocument;

/** Documents as plain maps, lists, texts, numbers and truth values, the only form that {@link BruteForce} reads. */
public final class DocumentMaps {

    private DocumentMaps() {}

    /**
     * Returns a model's document.
     *
     * @param model a model
     * @return its document, members in declared order
     */
    public static Map<String, Object> of(Model model) {
        return object((ObjectNode) ModelDocument.of(model));
    }

    /**
     * Returns the plain form of a part of a document.
     *
     * @param node any node but null
     * @return a map, list, text, decimal number or truth value
     */
    public static Object plain(Node node) {
        if (node instanceof ObjectNode object) {
            return object(object);
        } else if (node instanceof ListNode list) {
            List<Object> items = new ArrayList<>();
            list.items().forEach(item -> items.add(plain(item)));
            return items;
        } else if (node instanceof TextNode text) {
            return text.value();
        } else if (node instanceof NumberNode number) {
            return number.value();
        } else if (node instanceof FlagNode flag) {
            return flag.value();
        }
        throw new IllegalArgumentException("a document of this library holds no null");
    }

    private static Map<String, Object> object(ObjectNode node) {
        Map<String, Object> members = new LinkedHashMap<>();
        node.members().forEach((name, value) -> members.put(name, plain(value)));
        return members;
    }
}
