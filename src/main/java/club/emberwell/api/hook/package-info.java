/** Webhooks in the API: {@link club.emberwell.api.hook.WebhookResource}. */
package club.emberwell.api.hook;
